/** The last good forecast and what is going on with the next. Never part of the plan or its history. */
import { create } from 'zustand';
import type { PlanAnswer } from '../../physics/evening/answer.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Problem } from '../../physics/evening/problem.ts';
import type { EveningRun } from '../../physics/evening/run.ts';

export interface Forecast {
  readonly file: PlanFile;
  readonly evening: Evening;
  readonly answer: PlanAnswer;
  readonly run: EveningRun;
}

export interface ForecastState {
  readonly forecast: Forecast | undefined;
  /** of the plan as it stands now; empty when the forecast is of this plan */
  readonly problems: readonly Problem[];
  readonly busy: 'point' | 'band' | undefined;
  /** a fault of ours, not of the plan */
  readonly fault: string | undefined;
}

export const useForecast = create<ForecastState>()(() => ({
  forecast: undefined,
  problems: [],
  busy: undefined,
  fault: undefined,
}));

/** What the answer says of the bakes beside their figures: steps, what was done when, what to do where parts disagree. */
import { browningLaw } from '../bake/browning.ts';
import { bakeParameters } from '../bake/parameters.ts';
import { zeroCelsius } from '../materials/constants.ts';
import type { BakeAdvice, BakeExtras } from './answer.ts';
import type { Engine } from './engine.ts';
import type { Evening } from './evening.ts';
import { disagreement } from './remedies.ts';
import type { Bake, EveningRun } from './run.ts';

const minutes = (seconds: number): number => seconds / 60;
const orNull = (seconds: number | undefined): number | null =>
  seconds === undefined ? null : minutes(seconds);

/** @param atRun writes a moment given in s from switching the oven on */
export function bakeExtras(bake: Bake, atRun: (seconds: number) => string): BakeExtras {
  const { partsDone, steps, baseAhead } = bake;
  return {
    ...(partsDone && {
      partsDoneMinutes: {
        base: orNull(partsDone.base),
        rim: orNull(partsDone.rim),
        crumb: orNull(partsDone.crumb),
        cheese: orNull(partsDone.cheese),
      },
    }),
    ...(steps &&
      steps.length > 0 && {
        steps: steps.map(({ what, at, lasts }) => ({ what, at: atRun(at), seconds: lasts })),
      }),
    ...(baseAhead && {
      baseAhead: {
        minutes: minutes(baseAhead.seconds),
        baseLightness: baseAhead.baseLightness,
        rimLightness: baseAhead.rimLightness,
        waterLostG: 1000 * baseAhead.waterLost,
      },
    }),
  };
}

/** @param engine one that can; without its help there is nothing to advise */
export function bakeAdvice(evening: Evening, run: EveningRun, engine: Engine): BakeAdvice {
  const apart = disagreement(run.bakes[0]!);
  return {
    browningLaw: browningLaw(evening.pizzas.browningLaw ?? bakeParameters.browningLaw).source,
    disagreement: apart ? { first: apart.first, last: apart.last, minutes: minutes(apart.seconds) } : null,
    waitRule: evening.pizzas.wait === undefined ? (evening.pizzas.waitRule ?? 'quarter-longer') : 'given',
    remedies: (engine.remediesFor?.(evening, run) ?? []).map((remedy) => ({
      what: remedy.what,
      change: remedy.change,
      minutes: minutes(remedy.bake),
      finishMinutes: minutes(remedy.finish),
      baseLightness: remedy.baseLightness,
      rimLightness: remedy.rimLightness,
      waterLeftOnTopG: 1000 * remedy.waterLeftOnTop,
      preheatMinutes: minutes(remedy.plateReady),
    })),
    waitOrBake: (engine.waitCurves?.(run) ?? []).map(({ pizza, points }) => ({
      pizza,
      plannedWaitMinutes: minutes(run.bakes[pizza - 1]!.inAt - run.bakes[pizza - 2]!.outAt),
      waitMinutes: points.map(({ wait }) => minutes(wait)),
      bakeMinutes: points.map(({ bake }) => minutes(bake)),
      totalMinutes: points.map(({ total }) => minutes(total)),
      plateTopC: points.map(({ plateTop }) => plateTop - zeroCelsius),
    })),
  };
}

/** `calibrate`: readings of a thermometer to what they say of the oven, and the plan before and after. */
import { calibrate, type Calibration, type EstimateName } from '../../physics/calibrate/calibrate.ts';
import { readReadings, usualUnit } from '../../physics/calibrate/readings.ts';
import { placeWords } from '../../physics/calibrate/forecast.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Range } from '../../physics/evening/answer.ts';
import { hostileProblems, shapeProblems } from '../../physics/evening/planShape.ts';
import { inUnits, showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import { calibrateHelp } from './arguments.ts';
import { section, wrap } from './page.ts';
import { commanded, refuse, type ExitStatus, type TerminalIo } from './plan.ts';

const labels: Readonly<Record<EstimateName, string>> = {
  power: 'power of the elements',
  plateMass: 'mass of the plate, by how slowly it heats',
  thermostatOffset: 'oven hotter than its dial by',
  browningRate: 'pizzas brown times the usual rate',
};

function shown(name: EstimateName, value: number, units: UnitSystem): string {
  if (name === 'power') return showQuantity(1000 * value, 'power', units);
  if (name === 'plateMass') return showQuantity(value, 'mass', units);
  if (name === 'thermostatOffset') return showQuantity(value, 'temperatureDifference', units);
  return value.toFixed(2);
}

function range([low, high]: Range, decimals: number): string {
  return `${low.toFixed(decimals)} to ${high.toFixed(decimals)}`;
}

/** What was learned, for a reader. */
export function calibrationText(learned: Calibration, units: UnitSystem): string {
  const { estimates, notTold, before, after, residuals, nextReading: next, bakes } = learned;
  const degrees = (celsius: number): string => showQuantity(celsius + 273.15, 'temperature', units);
  const kelvin = (value: number): string =>
    (value < 0 ? '-' : '+') + showQuantity(Math.abs(value), 'temperatureDifference', units, { decimals: 1 });
  const numbers = Object.entries(estimates).map(([key, { value, p10, p90 }]) => {
    const name = key as EstimateName;
    // An oven that is colder by so much says it without a sign.
    const colder = name === 'thermostatOffset' && value < 0;
    const [label, most, low, high] = colder
      ? ['oven colder than its dial by', -value, -p90, -p10]
      : [labels[name], value, p10, p90];
    return `  ${label}: ${shown(name, most, units)} (${shown(name, low, units)} to ${shown(name, high, units)})`;
  });
  const lines = [
    'What the readings tell (likely range: 8 in 10)',
    ...(numbers.length > 0 ? numbers : ['  nothing that was not believed before']),
    ...(notTold.length > 0
      ? wrap(`not told: ${notTold.map((name) => labels[name]).join('; ')}`, '  ', 4)
      : []),
    ...section('The plan, before and after', [
      `  preheat: ${before.preheat.minutes.toFixed(0)} min${before.range ? ` (${range(before.range.preheatMinutes, 0)})` : ''}, now ${after.preheat.minutes.toFixed(0)} min${after.range ? ` (${range(after.range.preheatMinutes, 0)})` : ''}`,
      `  plate settles at ${degrees(before.preheat.settledPlateTopC)}, now ${degrees(after.preheat.settledPlateTopC)}`,
      `  first bake: ${before.bakes[0]!.minutes.toFixed(1)} min, now ${after.bakes[0]!.minutes.toFixed(1)} min`,
    ]),
    ...section(
      'Readings beside the fitted oven',
      residuals.map(
        ({ minute, place, pizza, readingC, modelC, residualK }) =>
          `  ${minute.toFixed(0).padStart(4)} min  ${(placeWords[place] + (pizza === undefined ? '' : ` under pizza ${pizza}`)).padEnd(10)}  read ${degrees(readingC)}, model ${degrees(modelC)}  (${kelvin(residualK)})`,
      ),
    ),
    ...section(
      'The bakes',
      bakes.map(
        ({ pizza, seconds, seen, before: planned, model }) =>
          `  pizza ${pizza}, ${(seconds / 60).toFixed(1)} min: base seen at L* ${seen.toFixed(0)}, the plan gave ${planned.toFixed(0)}, now ${model.toFixed(0)}`,
      ),
    ),
    ...section('Next', [
      next === null
        ? '  no single reading would narrow the preheat by much'
        : `  most would be learned from the ${placeWords[next.place]} at ${next.minute} min: the range of the preheat narrows by ${next.narrowsMinutes.toFixed(1)} min`,
    ]),
    ...section(
      'Mind',
      learned.warnings.flatMap(({ message }) => wrap(inUnits(message, units), '  ')),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

/** Runs the command. */
export function runCalibrate(argv: readonly string[], io: TerminalIo): Promise<ExitStatus> {
  const about = { command: 'calibrate', help: calibrateHelp } as const;
  return commanded(
    argv,
    io,
    about,
    ({ readings }) => readings,
    async ({ request, file }, readings) => {
      const unfit = [...hostileProblems(file), ...shapeProblems(file)];
      if (unfit.length > 0) return refuse(unfit, io);
      const csv = await io.readFile(readings);
      const { now, offsetMinutes } = io;
      const done = calibrate(
        // Its shape was looked at just now, and planning looks at its values.
        file as PlanFile,
        (ovenOn) => readReadings(csv, { ovenOn, offsetMinutes, usualUnit: usualUnit(request.units) }),
        { now, offsetMinutes, readingSpread: request.readingSpread },
      );
      if (!done.ok) return refuse(done.problems, io);
      const { calibration } = done;
      for (const { line, found, allowed } of [...calibration.dropped, ...calibration.aside])
        io.stderr(`readings${line > 0 ? ` line ${line}` : ''}: left out ${found}; ${allowed}\n`);
      io.stdout(
        request.json ? `${JSON.stringify(calibration)}\n` : calibrationText(calibration, request.units),
      );
      return 0;
    },
  );
}

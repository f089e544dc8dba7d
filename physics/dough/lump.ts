/** A piece of dough as one temperature that follows its surroundings. */
import type { CoverId } from '../evening/ids.ts';
import { OutOfRange } from '../evening/problem.ts';

/**
 * W/(m2 K) at the dough's skin: the stiller a cover keeps the air, the slower the dough follows. Our estimates: oiled
 * and bare to still air 9 (convection and radiation; the oil keeps the skin from drying, and so from cooling itself);
 * a bowl or tray under cloth, lid or film 6; balls in a shut stack of boxes 4.
 */
const skinConductance: Readonly<Record<CoverId, number>> = { oiled: 9, covered: 6, boxed: 4 };

/**
 * kg/m3, J/(kg K), W/(m K) of dough that has begun to rise; specific heat between 2.4 and 3.2 kJ/(kg K) as measured on
 * five doughs (isoperibol calorimeter paper), conductivity at least 0.29 (Budzaki and Seruga 2015); the rest assumed.
 */
const dough = { density: 1150, specificHeat: 2800, conductivity: 0.4 } as const;

/**
 * Time constant of a ball of this mass, s. With r the radius,
 *
 *     tau = (rho c r / 3) (1/h + r/(5 k))
 *
 * the second term being the conduction inside (mean temperature of a sphere), which counts from a Biot number of 0.1.
 *
 * @param mass kg, above 0
 */
export function timeConstant(mass: number, cover: CoverId): number {
  if (!(mass > 0 && Number.isFinite(mass))) throw new OutOfRange('mass', `${mass} kg`, 'above 0 kg');
  const radius = Math.cbrt((3 * mass) / (4 * Math.PI * dough.density));
  return (
    ((dough.density * dough.specificHeat * radius) / 3) *
    (1 / skinConductance[cover] + radius / (5 * dough.conductivity))
  );
}

/** K after `seconds` in surroundings of one temperature: closed form, T_e + (T_0 - T_e) exp(-t/tau). */
export function temperatureAfter(start: number, surroundings: number, tau: number, seconds: number): number {
  return surroundings + (start - surroundings) * Math.exp(-seconds / tau);
}

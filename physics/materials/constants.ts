/** Stefan-Boltzmann constant, W/(m2 K4). Source: CODATA 2018 (exact since 2019, rounded here to ten digits). */
export const stefanBoltzmann = 5.670374419e-8;
/** Molar gas constant, J/(mol K). Source: CODATA 2018. */
export const gasConstant = 8.314462618;
/** Molar mass of water, kg/mol. Source: IAPWS R6-95. */
export const molarMassWater = 0.018015268;
/** Molar mass of dry air, kg/mol. Source: US Standard Atmosphere 1976 (0.0289644), with today's CO2. */
export const molarMassAir = 0.0289647;
/** 0 degC in kelvin. Source: definition of the Celsius scale. */
export const zeroCelsius = 273.15;
/** Standard acceleration of gravity, m/s2. Source: CGPM 1901. */
export const gravity = 9.80665;
/** One standard atmosphere, Pa. Source: CGPM 1954. */
export const standardPressure = 101325;

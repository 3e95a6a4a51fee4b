// The one home of physical constants and of conversions that are no unit, each with its source.

interface Constant {
  readonly symbol: string;
  readonly value: number;
  readonly unit: string;
  readonly says: string;
  readonly source: string;
}

export const standardGravity = {
  symbol: "g_n",
  value: 9.80665,
  unit: "m/s2",
  says: "standard acceleration of free fall",
  source: "3rd CGPM (1901), exact; NIST SP 811 (2008) B.8",
} as const satisfies Constant;

export const standardAtmosphere = {
  symbol: "p_std",
  value: 101325,
  unit: "Pa",
  kind: "absolute-pressure",
  says: "air pressure at sea level, taken where the site says nothing",
  source: "ISO 2533:1975, exact; NIST SP 811 (2008) B.8",
} as const satisfies Constant & { kind: string };

export const referencePressure = {
  symbol: "p_ref",
  value: 100e3,
  unit: "Pa",
  kind: "absolute-pressure",
  says: "pressure of the reference air ANR",
  source: "ISO 8778:2003 (pressure from memory, unchecked)",
} as const satisfies Constant & { kind: string };

export const referenceTemperature = {
  symbol: "T_ref",
  value: 293.15,
  unit: "K",
  kind: "temperature",
  says: "temperature of the reference air ANR, 20 degC at 65 % relative humidity",
  source: "ISO 8778:2003",
} as const satisfies Constant & { kind: string };

export const absoluteZero = {
  symbol: "T_0",
  value: 273.15,
  unit: "K",
  kind: "temperature",
  says: "0 degC above absolute zero",
  source: "SI brochure, 9th edition (2019) 2.3.1: t/degC = T/K - 273.15, exact",
} as const satisfies Constant & { kind: string };

export const copperResistivity = {
  symbol: "rho_Cu",
  value: 1.7241e-8,
  unit: "ohm*m",
  says: "resistivity of annealed copper at 20 degC",
  source: "IEC 60028:1925, 1/58 ohm*mm2/m",
} as const satisfies Constant;

export const copperTemperatureCoefficient = {
  symbol: "alpha_Cu",
  value: 0.00393,
  unit: "1/K",
  says: "rise of the resistance of copper a kelvin, from 20 degC",
  source: "IEC 60028:1925",
} as const satisfies Constant;

export const copperInverseCoefficient = {
  symbol: "beta_Cu",
  value: 234.5,
  unit: "K",
  kind: "temperature-difference",
  says: "reciprocal of the temperature coefficient of copper at 0 degC",
  source: "IEC 60364-5-54 annex A; IEC 60034-1 uses 235 for the rise of windings",
} as const satisfies Constant & { kind: string };

export const copperVolumetricHeat = {
  symbol: "Q_Cu",
  value: 3.45e6,
  unit: "J/(m3*K)",
  says: "heat capacity of copper a volume",
  source: "IEC 60364-5-54 annex A: 3.45e-3 J/(K*mm3)",
} as const satisfies Constant;

export const aluminiumResistivity = {
  symbol: "rho_Al",
  value: 2.83e-8,
  unit: "ohm*m",
  says: "resistivity of aluminium conductors at 20 degC",
  source: "IEC 60889:1987: 0.028264 ohm*mm2/m, rounded up",
} as const satisfies Constant;

export const aluminiumTemperatureCoefficient = {
  symbol: "alpha_Al",
  value: 0.00403,
  unit: "1/K",
  says: "rise of the resistance of aluminium a kelvin, from 20 degC",
  source: "IEC 60889:1987",
} as const satisfies Constant;

/**
 * Sonic conductance C [dm3/(s*bar)] a unit of Cv. Cv is defined at a small drop (ANSI/NFPA T3.21.3), C where the flow chokes (ISO 6358), so
 * their ratio hangs on the critical ratio: 4.22 at 0.2, 3.34 at 0.5. A band, and no exact factor exists.
 */
export const conductancePerCv = { nominal: 4.0, low: 3.3, high: 4.3 } as const;

/** Kv [m3/h of water at 1 bar] a unit of Cv [US gal/min of water at 1 psi]: 0.865 (IEC 60534-2-1). */
export const kvPerCv = 0.865;

/** Sonic conductance of a bore of 1 mm [dm3/(s*bar)], C = k*d^2; practice, unchecked. */
export const conductancePerBore = { nominal: 0.115, low: 0.1, high: 0.13 } as const;

/** American wire gauge: No. 36 is 0.005 in, No. 0000 is 0.46 in, 39 equal steps between (ASTM B258-18). */
export const wireGauge = { finest: 0.127e-3, finestNumber: 36, ratio: 92, steps: 39 } as const;

/** States in which an amount of air may be counted: absolute pressure [Pa], temperature [K]. */
export const airStates = {
  ANR: { pressure: referencePressure.value, temperature: referenceTemperature.value },
  /** DIN 1343: 0 degC. */
  normal: { pressure: standardAtmosphere.value, temperature: absoluteZero.value },
  /** 14.7 psi and 60 degF. */
  "standard-60": { pressure: standardAtmosphere.value, temperature: ((60 + 459.67) * 5) / 9 },
  /** 14.7 psi and 68 degF. */
  "standard-68": { pressure: standardAtmosphere.value, temperature: 293.15 },
} as const;

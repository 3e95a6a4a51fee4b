// Stopping on a ramp: the power that comes back to the bus, the resistor it asks for, and how fast a drive without one can stop.

/** A stop on a straight ramp. */
interface Ramp {
  /** Inertia at the motor, as it is when braking [kg m2]. */
  J: number;
  /** Motor speed at the start [rad/s]. */
  w: number;
  /** Friction at the motor, helping [N m]. */
  T_f: number;
  /** Efficiency of motor and of drive while braking [1]. */
  eta_m: number;
  eta_d: number;
}

/**
 * Torque the motor must brake with to stop on a ramp.
 *
 * T_b [N m] = J w/t - T_f, not below 0: where friction alone stops faster, the motor drives. J [kg m2]; w [rad/s]; t [s] of the ramp; T_f [N m].
 * Source: Newton.
 */
export function rampBrakeTorque(x: { J: number; w: number; t: number; T_f: number }): number {
  return Math.max(0, (x.J * x.w) / x.t - x.T_f);
}

/**
 * Greatest power that a stop on a ramp sends to the bus, at its beginning.
 *
 * P [W] = (J w/t - T_f) w eta_m eta_d, not below 0; t [s] of the ramp to standstill; other symbols: J [kg m2], w [rad/s], T_f [N m] at the motor.
 * Source: energy balance.
 */
export function brakePeakPower(x: Ramp & { t: number }): number {
  return rampBrakeTorque(x) * x.w * x.eta_m * x.eta_d;
}

/**
 * Energy of one stop on a ramp.
 *
 * E [J] = P t/2, the area under a power that falls straight to nothing; symbols as brakePeakPower. Source: energy balance.
 */
export function brakeEnergy(x: Ramp & { t: number }): number {
  return (brakePeakPower(x) * x.t) / 2;
}

/**
 * Largest resistor that still takes the peak.
 *
 * R [ohm] = V^2/P; V [V] bus voltage at which the chopper switches on (the trip leaves nothing in hand); P [W] peak. Must not be below the
 * smallest the chopper allows. Source: Ohm's law. Nothing to take: any, Infinity.
 */
export function brakeResistanceMax(x: { V: number; P: number }): number {
  return (x.V * x.V) / x.P;
}

/**
 * Mean power in the resistor.
 *
 * P_mean [W] = E/t_c; E [J] of a stop; t_c [s] between two stops. Source: definition.
 */
export function brakeMeanPower(x: { E: number; t_c: number }): number {
  return x.E / x.t_c;
}

/**
 * Energy the bus takes up before it trips.
 *
 * E_C [J] = C (V_trip^2 - V_0^2)/2; C [F]; V_trip, V_0 [V] trip and running voltage of the bus. Source: energy of a capacitor.
 */
export function busReserve(x: { C: number; V_trip: number; V_0: number }): number {
  return Math.max(0, (x.C * (x.V_trip * x.V_trip - x.V_0 * x.V_0)) / 2);
}

/**
 * Shortest stop on a ramp that a drive without resistor survives.
 *
 * t [s] = a (a - 2 E)/(a c - E b + sqrt(E (2 a c P_l + E b^2))), a = J w^2 eta_m eta_d, b = T_f w eta_m eta_d, c = b + P_l: the ramp whose power above the
 * losses P_l, summed, (P_0 - P_l)^2 t/(2 P_0) with P_0 = a/t - b, just fills the bus. E [J] busReserve; P_l [W] the drive draws from its bus all the while;
 * J [kg m2], w [rad/s], T_f [N m] at the motor. Source: energy balance of the bus, closed form. The bus takes all: 0; nothing takes anything: never,
 * Infinity. Often near the time to coast, a/b.
 */
export function stopTimeWithoutResistor(x: Ramp & { E: number; P_l: number }): number {
  const eta = x.eta_m * x.eta_d;
  const a = x.J * x.w * x.w * eta;
  if (a <= 2 * x.E) return 0;
  const b = x.T_f * x.w * eta;
  const c = b + x.P_l;
  return (a * (a - 2 * x.E)) / (a * c - x.E * b + Math.sqrt(x.E * (2 * a * c * x.P_l + x.E * b * b)));
}

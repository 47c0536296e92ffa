/**
 * Explicit Runge–Kutta pair of order 5(4) of Dormand and Prince (1980), with the continuous extension of
 * order 4 of Hairer, Nørsett and Wanner (1993), section II.6. See docs/equations/numerics.md#integrator.
 *
 * A system is a list of named state variables and an `evaluate` that reads their `trial` values and
 * writes their `rate`s. Everything lives in those objects, so a step allocates nothing.
 */

// Coefficients of the pair: [dormand1980], table 2; continuous extension: [hairer1993], p. 192 f.
const A21 = 1 / 5;
const A31 = 3 / 40;
const A32 = 9 / 40;
const A41 = 44 / 45;
const A42 = -56 / 15;
const A43 = 32 / 9;
const A51 = 19372 / 6561;
const A52 = -25360 / 2187;
const A53 = 64448 / 6561;
const A54 = -212 / 729;
const A61 = 9017 / 3168;
const A62 = -355 / 33;
const A63 = 46732 / 5247;
const A64 = 49 / 176;
const A65 = -5103 / 18656;
const A71 = 35 / 384;
const A73 = 500 / 1113;
const A74 = 125 / 192;
const A75 = -2187 / 6784;
const A76 = 11 / 84;
const E1 = 71 / 57600;
const E3 = -71 / 16695;
const E4 = 71 / 1920;
const E5 = -17253 / 339200;
const E6 = 22 / 525;
const E7 = -1 / 40;
const D1 = -12715105075 / 11282082432;
const D3 = 87487479700 / 32700410799;
const D4 = -10690763975 / 1880347072;
const D5 = 701980252875 / 199316789632;
const D6 = -1453857185 / 822651844;
const D7 = 69997945 / 29380423;

/** Exponent of the squared error norm in the step size: the error of a step grows with h⁵. */
const CONTROL_EXPONENT = -1 / 10;
/** Safety factor of the next step and the limits of its change ([hairer1993], section II.4). */
const SAFETY = 0.9;
const LARGEST_GROWTH = 5;
const LARGEST_SHRINK = 0.2;
/** A step below this part of the elapsed time can no longer be told from rounding (2⁻⁵² with some margin). */
const SMALLEST_STEP = 1e-14;
/** Width in θ at which an event within a step counts as located. */
const EVENT_WIDTH = 1e-14;
/** Of which the last is the first of the next step. */
const STAGES = 7;
const MOST_EVENT_ITERATIONS = 60;

/** One component of the state: value at the start of the step, stages, value at the end. */
export class StateVariable {
  value = 0;
  /** Value at which the system is to be evaluated. */
  trial = 0;
  /** Time derivative at `trial`, written by the system. */
  rate = 0;
  /** Value at the end of the step tried last. */
  next = 0;
  /** Local error that one step may make. */
  tolerance = 1;
  k1 = 0;
  k2 = 0;
  k3 = 0;
  k4 = 0;
  k5 = 0;
  k6 = 0;
  k7 = 0;

  set(value: number, tolerance: number): void {
    this.value = value;
    this.trial = value;
    this.tolerance = tolerance;
  }

  /** Value at the part `theta` (0…1) of the step of size `h` tried last, by the continuous extension. */
  interpolate(theta: number, h: number): number {
    const rise = this.next - this.value;
    const startBend = h * this.k1 - rise;
    const endBend = rise - h * this.k7 - startBend;
    const quartic =
      h * (D1 * this.k1 + D3 * this.k3 + D4 * this.k4 + D5 * this.k5 + D6 * this.k6 + D7 * this.k7);
    const rest = 1 - theta;
    return this.value + theta * (rise + rest * (startBend + theta * (endBend + rest * quartic)));
  }
}

/** Autonomous first-order system y′ = f(y). */
export interface OdeSystem {
  readonly variables: readonly StateVariable[];
  /** Writes the `rate` of every variable for the present `trial` values. */
  evaluate(): void;
}

/** The stepper. Call `start`, then repeat: `tryStep`, look at the step, `accept` all or part of it. */
export class DormandPrince {
  /** Elapsed time at the start of the step, s. */
  time = 0;
  /** Size of the step tried last, s. */
  h = 0;
  steps = 0;
  evaluations = 0;
  private proposal = 0;
  private errorSquared = 0;
  private firstStep = 0;

  constructor(private readonly system: OdeSystem) {}

  /** Begins at time 0 from the variables' present values with a first step of size `firstStep`. */
  start(firstStep: number): void {
    this.time = 0;
    this.steps = 0;
    this.evaluations = 0;
    this.proposal = firstStep;
    this.firstStep = firstStep;
    this.evaluateHere();
  }

  /** Tries steps until one meets the tolerances; false if the step size vanishes. */
  tryStep(): boolean {
    this.h = this.proposal;
    for (;;) {
      this.attempt();
      const change = SAFETY * this.errorSquared ** CONTROL_EXPONENT;
      if (this.errorSquared <= 1) {
        this.proposal = this.h * Math.min(LARGEST_GROWTH, Math.max(LARGEST_SHRINK, change));
        return true;
      }
      // A trial state outside the domain gives NaN, which fails every comparison: shrink as far as allowed.
      this.h *= change > LARGEST_SHRINK ? change : LARGEST_SHRINK;
      if (this.h < SMALLEST_STEP * Math.max(this.time, this.firstStep)) return false;
    }
  }

  /** Tries one step of size `h` whatever its error; returns the squared error norm (≤ 1: within tolerance). */
  tryStepOf(h: number): number {
    this.h = h;
    this.attempt();
    return this.errorSquared;
  }

  /** Tries a step of size `h`. Numbers go in and out by fields, since V8 allocates those that go through a call. */
  private attempt(): void {
    const { h } = this;
    const { variables } = this.system;
    for (const y of variables) y.trial = y.value + h * A21 * y.k1;
    this.system.evaluate();
    for (const y of variables) {
      y.k2 = y.rate;
      y.trial = y.value + h * (A31 * y.k1 + A32 * y.k2);
    }
    this.system.evaluate();
    for (const y of variables) {
      y.k3 = y.rate;
      y.trial = y.value + h * (A41 * y.k1 + A42 * y.k2 + A43 * y.k3);
    }
    this.system.evaluate();
    for (const y of variables) {
      y.k4 = y.rate;
      y.trial = y.value + h * (A51 * y.k1 + A52 * y.k2 + A53 * y.k3 + A54 * y.k4);
    }
    this.system.evaluate();
    for (const y of variables) {
      y.k5 = y.rate;
      y.trial = y.value + h * (A61 * y.k1 + A62 * y.k2 + A63 * y.k3 + A64 * y.k4 + A65 * y.k5);
    }
    this.system.evaluate();
    for (const y of variables) {
      y.k6 = y.rate;
      y.next = y.value + h * (A71 * y.k1 + A73 * y.k3 + A74 * y.k4 + A75 * y.k5 + A76 * y.k6);
      y.trial = y.next;
    }
    this.system.evaluate();
    let sum = 0;
    for (const y of variables) {
      y.k7 = y.rate;
      const error =
        (h * (E1 * y.k1 + E3 * y.k3 + E4 * y.k4 + E5 * y.k5 + E6 * y.k6 + E7 * y.k7)) / y.tolerance;
      sum += error * error;
    }
    this.evaluations += STAGES - 1;
    this.errorSquared = sum / variables.length;
  }

  /** Takes the whole step tried last. */
  accept(): void {
    for (const y of this.system.variables) {
      y.value = y.next;
      y.k1 = y.k7;
    }
    this.time += this.h;
    this.steps += 1;
  }

  /** Takes the part `theta` of the step tried last, and evaluates anew there (the equations may have changed). */
  acceptPart(theta: number): void {
    const { h } = this;
    for (const y of this.system.variables) y.value = y.interpolate(theta, h);
    this.time += theta * h;
    this.steps += 1;
    this.evaluateHere();
  }

  /** Value of `variable` at the part `theta` of the step tried last. */
  at(variable: StateVariable, theta: number): number {
    return theta === 1 ? variable.next : variable.interpolate(theta, this.h);
  }

  /**
   * Part θ of the step tried last at which `variable` crosses `level`, which must lie between its values at
   * the start of the step and at `upTo`; by the Illinois variant of false position on the continuous extension.
   */
  locate(variable: StateVariable, level: number, upTo: number): number {
    const { h } = this;
    let older = 0;
    let newer = upTo;
    let atOlder = variable.value - level;
    let atNewer = this.at(variable, upTo) - level;
    for (let i = 0; i < MOST_EVENT_ITERATIONS; i++) {
      if (atNewer === 0 || Math.abs(newer - older) < EVENT_WIDTH) break;
      const theta = newer - (atNewer * (newer - older)) / (atNewer - atOlder);
      const here = variable.interpolate(theta, h) - level;
      if (here < 0 === atNewer < 0) {
        atOlder /= 2;
      } else {
        older = newer;
        atOlder = atNewer;
      }
      newer = theta;
      atNewer = here;
    }
    return newer;
  }

  private evaluateHere(): void {
    for (const y of this.system.variables) y.trial = y.value;
    this.system.evaluate();
    for (const y of this.system.variables) y.k1 = y.rate;
    this.evaluations += 1;
  }
}

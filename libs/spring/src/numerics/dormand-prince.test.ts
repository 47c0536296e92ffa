import { describe, expect, it } from 'vitest';
import { DormandPrince, StateVariable } from './dormand-prince.js';

/** x″ = −x from (1, 0): x = cos t. */
function oscillator(): { x: StateVariable; v: StateVariable; stepper: DormandPrince } {
  const x = new StateVariable();
  const v = new StateVariable();
  const stepper = new DormandPrince({
    variables: [x, v],
    evaluate() {
      x.rate = v.trial;
      v.rate = -x.trial;
    },
  });
  x.set(1, 1);
  v.set(0, 1);
  stepper.start(1);
  return { x, v, stepper };
}

function errorWithSteps(count: number): number {
  const { x, stepper } = oscillator();
  for (let i = 0; i < count; i++) {
    stepper.tryStepOf(1 / count);
    stepper.accept();
  }
  return Math.abs(x.value - Math.cos(1));
}

/** Error in the middle of one step of size h, which is of one order more than the global error. */
function interpolationError(h: number): number {
  const { x, stepper } = oscillator();
  stepper.tryStepOf(h);
  return Math.abs(x.interpolate(1 / 2, h) - Math.cos(h / 2));
}

describe('DormandPrince', () => {
  it('has order 5: halving the step divides the error by about 32', () => {
    const order = Math.log2(errorWithSteps(8) / errorWithSteps(16));
    expect(order).toBeGreaterThan(4.7);
    expect(order).toBeLessThan(5.5);
  });

  it('has a continuous extension of order 4: local error of order 5', () => {
    const order = Math.log2(interpolationError(0.2) / interpolationError(0.1));
    expect(order).toBeGreaterThan(4.7);
    expect(order).toBeLessThan(6.5);
  });

  it('keeps the error in proportion to the tolerance', () => {
    const errors = [1e-6, 1e-8, 1e-10].map((tolerance) => {
      const { x, v, stepper } = oscillator();
      x.set(1, tolerance);
      v.set(0, tolerance);
      stepper.start(1e-3);
      while (stepper.time < 10 && stepper.tryStep()) stepper.accept();
      return Math.abs(x.value - Math.cos(stepper.time)) / tolerance;
    });
    // Local errors of at most the tolerance, over some 10 to 300 steps.
    for (const error of errors) expect(error).toBeLessThan(100);
  });

  it('locates an event by the continuous extension: the first zero of the cosine', () => {
    const { x, v, stepper } = oscillator();
    x.set(1, 1e-12);
    v.set(0, 1e-12);
    stepper.start(1e-3);
    while (stepper.tryStep() && x.next > 0) stepper.accept();
    stepper.acceptPart(stepper.locate(x, 0, 1));
    expect(stepper.time).toBeCloseTo(Math.PI / 2, 9);
  });

  it('gives up, and says so, where the solution ends: y′ = y² reaches infinity at t = 1', () => {
    const y = new StateVariable();
    const stepper = new DormandPrince({
      variables: [y],
      evaluate() {
        y.rate = y.trial ** 2;
      },
    });
    y.set(1, 1e-6);
    stepper.start(1e-3);
    let steps = 0;
    while (stepper.tryStep() && steps < 100_000) {
      stepper.accept();
      steps += 1;
    }
    expect(steps).toBeLessThan(100_000);
    expect(stepper.time).toBeLessThanOrEqual(1 + 1e-6);
  });
});

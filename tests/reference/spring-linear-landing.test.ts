import { describe, expect, it } from 'vitest';
// The integrator is not part of the library's public face; a spring with a straight force is not an air spring.
import { DormandPrince, StateVariable } from '../../libs/spring/src/numerics/dormand-prince.js';
import { referenceOutputs } from './spring-reference.js';

interface LinearLanding {
  m: number;
  k: number;
  h: number;
  x_peak: number;
  t_peak: number;
}

const GRAVITY = 9.80665;

function land({ m, k, h }: LinearLanding, tolerance: number): { travel: number; time: number } {
  const travel = new StateVariable();
  const speed = new StateVariable();
  const stepper = new DormandPrince({
    variables: [travel, speed],
    evaluate() {
      travel.rate = speed.trial;
      speed.rate = GRAVITY - (k / m) * travel.trial;
    },
  });
  travel.set(0, tolerance);
  speed.set(Math.sqrt(2 * GRAVITY * h), tolerance);
  stepper.start(1e-4);
  while (stepper.tryStep()) {
    if (speed.next < 0) {
      stepper.acceptPart(stepper.locate(speed, 0, 1));
      return { travel: travel.value, time: stepper.time };
    }
    stepper.accept();
  }
  throw new Error('step size vanished');
}

describe('landing on a linear spring without damping (closed form)', () => {
  it.each(referenceOutputs<LinearLanding[]>('linear_landing'))('m = $m kg, k = $k N/m, h = $h m', (reference) => {
    // The file asks for 1e-8 at rtol 1e-9.
    const { travel, time } = land(reference, 1e-9);
    expect(Math.abs(travel - reference.x_peak)).toBeLessThan(1e-8);
    expect(Math.abs(time - reference.t_peak)).toBeLessThan(1e-8);
  });
});

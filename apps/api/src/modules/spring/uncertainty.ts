import {
  propagateUncertainty,
  sceneInputs,
  sceneWith,
  SpringInputError,
  type Scene,
  type SceneInput,
} from '@loamledger/spring';
import { gaugePascalFromPsi } from '@loamledger/units';
import type { QuestionEnd } from './question-end.js';
import { UNCERTAIN, type Uncertain } from './uncertain.js';
import type { UncertaintyDto } from './uncertainty.dto.js';

const PER_CENT = 100;

/** The engine's input that each uncertainty is of. */
const INPUTS: Readonly<Record<Uncertain, SceneInput>> = {
  pressurePsi: 'gaugePressure',
  sprungMassPct: 'sprungMass',
  positiveVolumePct: 'positiveVolume',
  negativeVolumePct: 'negativeVolume',
  spacerVolumePct: 'spacerVolume',
  lowerLegVolumePct: 'lowerLegVolume',
  dampingPct: 'logDamping',
  sealFrictionPct: 'sealFriction',
};

/**
 * How well an answer is known, in the unit that `fromSi`, a factor, makes of it. null where there is no answer, or none
 * for inputs next to those given.
 */
export function uncertaintyOf(
  end: QuestionEnd,
  scene: Scene,
  fromSi: (value: number) => number,
  answer: (scene: Scene) => number | undefined,
): UncertaintyDto | null {
  const values = sceneInputs(scene);
  const inputs = UNCERTAIN.map((name) => ({
    name,
    value: values[INPUTS[name]],
    sd: standardUncertainty(name, end, values),
    isAssumed: end.assumedUncertainties.includes(name),
  }));
  const found = propagateUncertainty(inputs, (moved) => {
    const changes = UNCERTAIN.map((name) => [INPUTS[name], moved[name]] as const);
    return finiteOrNone(() => answer(sceneWith(scene, Object.fromEntries(changes))));
  });
  if (found.status === 'no-answer') return null;
  return {
    sd: fromSi(found.sd),
    lower: fromSi(found.lower),
    upper: fromSi(found.upper),
    contributions: found.contributions
      .filter(({ share }) => share > 0)
      .map(({ name, effect, share, isAssumed }) => ({
        of: name,
        effect: fromSi(effect),
        sharePct: PER_CENT * share,
        assumed: isAssumed,
      })),
  };
}

/** In the unit of the engine's input; the damping's is that of the logarithm of a factor. */
function standardUncertainty(
  name: Uncertain,
  { uncertainty }: QuestionEnd,
  values: Readonly<Record<SceneInput, number>>,
): number {
  if (name === 'pressurePsi') return gaugePascalFromPsi(uncertainty.pressurePsi);
  const relative = uncertainty[name] / PER_CENT;
  return name === 'dampingPct' ? relative : relative * values[INPUTS[name]];
}

/** An input moved by its uncertainty can be one that cannot be: then there is no answer on that side. */
function finiteOrNone(answer: () => number | undefined): number | undefined {
  try {
    const value = answer();
    return value !== undefined && Number.isFinite(value) ? value : undefined;
  } catch (error) {
    if (error instanceof SpringInputError) return undefined;
    throw error;
  }
}

import { numberText, parseNumber } from '../../../shared/format/parse.js';
import { storedText } from '../../../shared/format/entry.js';
import type { Rider } from '../../../shared/http/reads/riders.js';
import type { RiderInput } from '../api/save-rider.js';

type Source = Rider['readyMassSource'];

/** What a new rider starts with: common practice, no source. */
const USUAL = {
  acceptedRiskPct: '5',
  fork: { sagLowPct: '15', sagHighPct: '20', reservePct: '6' },
  shock: { sagLowPct: '25', sagHighPct: '30', reservePct: '6' },
};

const wishTexts = (wish: Rider['fork']) => ({
  sagLowPct: numberText(wish.sagLowPct),
  sagHighPct: numberText(wish.sagHighPct),
  reservePct: numberText(wish.reservePct),
});

export function riderValues(rider: Rider | undefined) {
  if (rider === undefined) return { name: '', readyMassKg: '', readyMassSource: 'measured', ...USUAL };
  return {
    name: rider.name,
    readyMassKg: storedText(rider.readyMassKg),
    readyMassSource: rider.readyMassSource as string,
    acceptedRiskPct: numberText(rider.acceptedRiskPct),
    fork: wishTexts(rider.fork),
    shock: wishTexts(rider.shock),
  };
}

type RiderValues = ReturnType<typeof riderValues>;

// An empty field becomes NaN, which JSON carries as null and the API refuses at that field.
const figure = (text: string) => parseNumber(text) ?? Number.NaN;

const wish = (texts: RiderValues['fork']) => ({
  sagLowPct: figure(texts.sagLowPct),
  sagHighPct: figure(texts.sagHighPct),
  reservePct: figure(texts.reservePct),
});

export function riderMessage(values: RiderValues): RiderInput {
  return {
    name: values.name,
    readyMassKg: figure(values.readyMassKg),
    readyMassSource: values.readyMassSource as Source,
    acceptedRiskPct: figure(values.acceptedRiskPct),
    fork: wish(values.fork),
    shock: wish(values.shock),
  };
}

import { isAsApi, showIn, type Units } from './units.js';

let translate = (sentence: string) => sentence;

/** A sentence of the API, whose figures carry its own units, in the chosen ones. */
export const inChosenUnits = (sentence: string): string => translate(sentence);

/**
 * Shows figures in these units from now on, in sentences of the API too. Only who has chosen others than the API's
 * loads what finds them there: the phone's first load is small.
 */
export async function showFiguresIn(units: Units): Promise<void> {
  showIn(units);
  if (isAsApi(units)) return;
  try {
    translate = (await import('./unit-sentences.js')).withChosenUnits;
  } catch {
    // Without signal: sentences keep the units they were written with, which stand in them.
  }
}

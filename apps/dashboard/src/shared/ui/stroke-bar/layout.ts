import { withUnit } from '../../format/with-unit.js';

/** What a stroke bar can carry, in millimetres of stroke; what is unknown is left out. */
export interface StrokeMarks {
  readonly strokeMm: number;
  readonly sagMm?: number | undefined;
  readonly medianHitMm?: number | undefined;
  readonly highHit?: HighHit | undefined;
  /** The most that was used, where runs tell it. */
  readonly mostUsedMm?: number | undefined;
  readonly bumperStartMm?: number | undefined;
}

/** Travel at the hit that only one in twenty is harder than, with its interval where it is known. */
interface HighHit {
  readonly mm: number;
  readonly lowMm?: number | undefined;
  readonly highMm?: number | undefined;
}

export interface StrokeLabel {
  readonly key: 'sag' | 'median' | 'high' | 'most' | 'bumper';
  readonly text: string;
  /** Where the mark stands, px from the left end of the bar. */
  readonly markPx: number;
  /** Where the text begins, px. */
  readonly textPx: number;
  /** The line of text below the bar, from 0. */
  readonly row: number;
}

/** Mean width of a character of these labels at 14 px in the widest of the usual system fonts, measured in Chromium. */
const CHARACTER_PX = 8.2;
/** Room between two labels on the same line, px. */
const LABEL_GAP_PX = 12;
/** Axis figures are this far apart at least, px. */
const TICK_ROOM_PX = 46;
/** Room for the last figure, which carries the unit, px. */
const LAST_TICK_ROOM_PX = 72;
const TICK_STEPS_MM = [5, 10, 20, 50, 100];

const inMm = (figure: string) => withUnit(figure, 'mm');
const round = (mm: number) => Math.round(mm).toString();
/** A stroke is named as it is sold, halves of a millimetre included. */
const exact = (mm: number) => Number(mm.toFixed(1)).toString();

interface Word {
  readonly key: StrokeLabel['key'];
  readonly mm: number;
  readonly text: string;
  readonly spoken: string;
}

function highHitWord(hit: HighHit): Word {
  const text = `${withUnit('95', '%')} hit ${round(hit.mm)}`;
  const known = hit.lowMm !== undefined && hit.highMm !== undefined;
  const [low, high] = known ? [round(hit.lowMm), round(hit.highMm)] : ['', ''];
  return {
    key: 'high',
    mm: hit.mm,
    text: known ? `${text} (${low}–${high})` : text,
    spoken: known ? `${inMm(text)}, between ${low} and ${inMm(high)}` : inMm(text),
  };
}

function plainWord(key: StrokeLabel['key'], name: string, mm: number | undefined): Word[] {
  if (mm === undefined) return [];
  const text = `${name} ${round(mm)}`;
  return [{ key, mm, text, spoken: inMm(text) }];
}

/** The words of the marks that are known, from the left end of the stroke to the right. */
function words(marks: StrokeMarks): Word[] {
  return [
    ...plainWord('sag', 'sag', marks.sagMm),
    ...plainWord('median', 'median hit', marks.medianHitMm),
    ...(marks.highHit === undefined ? [] : [highHitWord(marks.highHit)]),
    ...plainWord('most', 'most used', marks.mostUsedMm),
    ...plainWord('bumper', 'bumper from', marks.bumperStartMm),
  ].sort((a, b) => a.mm - b.mm);
}

/** Pixels from the left end of a bar `widthPx` wide; a mark beyond the stroke stays at the end. */
export function toPixels(mm: number, strokeMm: number, widthPx: number): number {
  return (Math.min(Math.max(mm, 0), strokeMm) / strokeMm) * widthPx;
}

/**
 * Places the words under their marks. A word moves down a line where it would touch another, and
 * inward where it would leave the bar.
 */
export function layoutLabels(marks: StrokeMarks, widthPx: number): StrokeLabel[] {
  const rowEnds: number[] = [];
  return words(marks).map(({ key, mm, text }) => {
    const markPx = toPixels(mm, marks.strokeMm, widthPx);
    const textWidth = text.length * CHARACTER_PX;
    const textPx = Math.max(0, Math.min(markPx - textWidth / 2, widthPx - textWidth));
    const free = rowEnds.findIndex((end) => textPx >= end + LABEL_GAP_PX);
    const row = free === -1 ? rowEnds.length : free;
    rowEnds[row] = textPx + textWidth;
    return { key, text, markPx, textPx, row };
  });
}

/** The figure at the right end of the axis: 170 mm, 62.5 mm. */
export const strokeFigure = (strokeMm: number) => inMm(exact(strokeMm));

/** Millimetre figures of the axis, from 0 to the stroke, as many as have room. */
export function axisTicks(strokeMm: number, widthPx: number): number[] {
  const step =
    TICK_STEPS_MM.find((mm) => (mm / strokeMm) * widthPx >= TICK_ROOM_PX) ?? (TICK_STEPS_MM.at(-1) as number);
  const ticks: number[] = [];
  for (let mm = 0; ((strokeMm - mm) / strokeMm) * widthPx >= LAST_TICK_ROOM_PX; mm += step) ticks.push(mm);
  return [...ticks, strokeMm];
}

/** The bar in one sentence, for those who hear it. */
export function describeStroke(marks: StrokeMarks): string {
  return `${[`Stroke ${strokeFigure(marks.strokeMm)}`, ...words(marks).map(({ spoken }) => spoken)].join('; ')}.`;
}

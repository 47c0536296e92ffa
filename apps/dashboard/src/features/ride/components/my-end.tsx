import { formatNumber, pressureText, pumpable, temperatureText } from '../../../shared/format/numbers.js';
import type { EndSetup } from '../../../shared/http/reads/setups.js';
import { EndFigures } from '../../../shared/ui/end-figures.js';
import { Assumed } from '../../../shared/ui/note.js';
import { StrokeBar } from '../../../shared/ui/stroke-bar/stroke-bar.js';
import type { StrokeMarks } from '../../../shared/ui/stroke-bar/layout.js';
import type { TodaysPressure } from '../model/todays-pressure.js';
import { myBikeTexts } from '../my-bike-texts.js';
import classes from './ride.module.css';

export interface MyEndProps {
  readonly name: string;
  readonly fill: EndSetup;
  /** Null where nothing has to be corrected, undefined while it is not known. */
  readonly today: TodaysPressure | null | undefined;
  /** The temperature of today was not typed. */
  readonly isAssumed: boolean;
  /** What the set-up uses of its stroke on the chosen track, where it is known. */
  readonly stroke: StrokeMarks | undefined;
}

/** One end of the own bike: what the pump has to show today, and what it uses of its stroke. */
export function MyEnd({ name, fill, today, isAssumed, stroke }: MyEndProps) {
  const pressurePsi = today?.pumpToPsi ?? fill.pressurePsi;
  return (
    <div className={classes.end}>
      <h2>{name}</h2>
      <EndFigures end={{ ...fill, pressurePsi: pumpable(pressurePsi) }} big />
      <p className={today === null ? classes.filled : classes.corrected}>
        {today === null ? myBikeTexts.pumpedHere : today && filledAs(fill, today)}
        {today && isAssumed && <Assumed />}
      </p>
      {/* Its room is kept: it comes later. */}
      <div className={classes.stroke}>
        {stroke !== undefined && <StrokeBar title={name} titleHidden {...stroke} />}
      </div>
    </div>
  );
}

function filledAs(fill: EndSetup, today: TodaysPressure) {
  const filled = myBikeTexts.filledAs(
    pressureText(fill.pressurePsi),
    formatNumber(today.filledAltitudeM),
    temperatureText(today.filledTemperatureC),
  );
  const alone = myBikeTexts.leftAlone(pressureText(today.leftAlonePsi));
  return today.pumpToPsi === null
    ? `${myBikeTexts.notCorrected} ${filled} ${alone}`
    : `${myBikeTexts.today} ${filled} ${alone}`;
}

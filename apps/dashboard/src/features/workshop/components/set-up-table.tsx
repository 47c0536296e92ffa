import {
  formatSigned,
  formatCount,
  formatHeight,
  formatNumber,
  pressureText,
} from '../../../shared/format/numbers.js';
import { WarningMark } from '../../../shared/ui/note.js';
import type { DropTestAnswer } from '../api/drop-test.js';
import { texts } from '../drop-texts.js';
import { fits } from '../model/fit.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import { Scroller } from '../../../shared/ui/scroller.js';
import classes from './workshop.module.css';

/** Predicted against read for each set-up. */
export function SetUpTable({ setUps }: Pick<DropTestAnswer, 'setUps'>) {
  return (
    <Scroller>
      <table className={classes.table}>
        <thead>
          <tr>
            <th scope="col">{texts.setUp}</th>
            <th scope="col">{texts.count}</th>
            <th scope="col">{texts.read}</th>
            <th scope="col">{texts.predicted}</th>
            <th scope="col">{texts.difference}</th>
          </tr>
        </thead>
        <tbody>
          {setUps.map(({ pressurePsi, spacers, dropHeightM, count, readMm, predictedMm, residual }) => (
            <tr key={`${pressurePsi} ${spacers} ${dropHeightM}`}>
              <th scope="row">
                {pressureText(pressurePsi)} · {formatCount(spacers, 'spacer')} ·{' '}
                {withUnit(formatHeight(dropHeightM), 'm')}
              </th>
              <td>{count}</td>
              <td>{withUnit(formatNumber(readMm, 1), 'mm')}</td>
              <td>{withUnit(formatNumber(predictedMm, 1), 'mm')}</td>
              <td>
                {withUnit(formatSigned(readMm - predictedMm, 1), 'mm')}
                {!fits({ residual }) && (
                  <div>
                    <WarningMark>{texts.off}</WarningMark>
                  </div>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  );
}

import { Text } from '@mantine/core';
import { formatCount, formatNumber, temperatureText } from '../../../shared/format/numbers.js';
import type { EndSetup } from '../../../shared/http/reads/setups.js';
import { EndFigures } from '../../../shared/ui/end-figures.js';
import { WarningMark } from '../../../shared/ui/note.js';
import type { WorkOrder } from '../api/work-orders.js';
import { texts } from '../texts.js';
import { StepLine } from './step-line.js';
import classes from './work-orders.module.css';

interface OrderSheetProps {
  readonly teamId: string;
  readonly order: WorkOrder;
  readonly canTick: boolean;
}

/** The work at each end: what was and will be in it, what is needed, and the steps; made to be printed as it stands. */
export function OrderSheet({ teamId, order, canTick }: OrderSheetProps) {
  return (
    <>
      <Text fw={600}>{texts.manualFirst}</Text>
      {order.to.filledAltitudeM !== null && order.to.filledTemperatureC !== null && (
        <Text>
          {texts.meantAt(
            formatNumber(order.to.filledAltitudeM),
            temperatureText(order.to.filledTemperatureC),
          )}
        </Text>
      )}
      {order.parts.map((parts) => (
        <section key={parts.end} className={classes.end} aria-labelledby={`end-${parts.end}`}>
          <h2 id={`end-${parts.end}`}>
            {texts.end(parts.end === 'fork' ? texts.fork : texts.shock, parts.unitName)}
          </h2>
          <div className={classes.facts}>
            <Filled name={texts.was} end={order.from?.[parts.end] ?? null} />
            <Filled name={texts.willBe} end={order.to[parts.end]} />
            <div>
              <h3>{texts.parts}</h3>
              {parts.spacersNeeded === 0 ? (
                <Text>{puts(order, parts.end) ? texts.partsIn : texts.noParts}</Text>
              ) : (
                <Text>
                  {texts.spacers(formatCount(parts.spacersNeeded, 'spacer'), parts.spacersInStock)}
                  {parts.spacersNeeded > parts.spacersInStock && (
                    <>
                      {'. '}
                      <WarningMark>{texts.short}</WarningMark>
                    </>
                  )}
                </Text>
              )}
            </div>
          </div>
          <ol className={classes.steps}>
            {order.steps
              .filter(({ end }) => end === parts.end)
              .map((step) => (
                <StepLine key={step.id} teamId={teamId} step={step} canTick={canTick} />
              ))}
          </ol>
        </section>
      ))}
    </>
  );
}

/** Whether spacers go in at an end; none is needed any more once they are. */
const puts = ({ from, to }: WorkOrder, end: 'fork' | 'shock') =>
  (to[end]?.spacers ?? 0) > (from?.[end]?.spacers ?? 0);

function Filled({ name, end }: { name: string; end: EndSetup | null }) {
  return (
    <div>
      <h3>{name}</h3>
      {end === null ? <Text>{texts.notKnown}</Text> : <EndFigures end={end} />}
    </div>
  );
}

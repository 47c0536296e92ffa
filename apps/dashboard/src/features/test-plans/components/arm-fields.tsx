import { Button, NativeSelect, Text, TextInput } from '@mantine/core';
import { formatDay } from '../../../shared/format/time.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { TextLink } from '../../../shared/ui/link.js';
import { armField, type ArmValues, type PlanErrors } from '../model/plan-form.js';
import { setupWords } from '../model/set-up-words.js';
import { texts } from '../texts.js';
import classes from './plans.module.css';

/** A bike of the plan with its set-ups, newest first; undefined while they are read. */
export interface BikeToRide {
  readonly bike: Bike;
  readonly setups: readonly Setup[] | undefined;
}

interface ArmFieldsProps {
  readonly teamId: string;
  readonly index: number;
  readonly arm: ArmValues;
  readonly bikes: readonly BikeToRide[];
  readonly errors: PlanErrors;
  readonly onChange: (arm: ArmValues) => void;
  /** Where more than two are tried. */
  readonly onRemove: (() => void) | undefined;
}

/** One thing to try: its name, and which set-up stands for it on each bike. */
export function ArmFields({ teamId, index, arm, bikes, errors, onChange, onRemove }: ArmFieldsProps) {
  return (
    <div className={classes.arm} role="group" aria-label={texts.arm(index)}>
      <TextInput
        label={`${texts.arm(index)}: ${texts.armName.toLowerCase()}`}
        description={index === 0 ? undefined : texts.armNameHint}
        autoComplete="off"
        value={arm.name}
        error={errors[armField(arm)]}
        onChange={(event) => onChange({ ...arm, name: event.currentTarget.value })}
      />
      {bikes.map(({ bike, setups }) =>
        setups?.length === 0 ? (
          <Text key={bike.id}>{texts.noSetups(bike.name)}</Text>
        ) : (
          <NativeSelect
            key={bike.id}
            label={texts.setupOf(bike.name)}
            value={arm.setups[bike.id] ?? ''}
            error={errors[armField(arm, bike.id)]}
            onChange={(event) =>
              onChange({ ...arm, setups: { ...arm.setups, [bike.id]: event.currentTarget.value } })
            }
            data={[
              { value: '', label: texts.chooseSetup },
              ...(setups ?? []).map((setup) => ({ value: setup.id, label: choiceOf(setup) })),
            ]}
          />
        ),
      )}
      {index > 0 &&
        bikes.map(({ bike }) => (
          <TextLink
            key={bike.id}
            to="/teams/$teamId/bikes/$bikeId/workbench"
            params={{ teamId, bikeId: bike.id }}
          >
            {texts.newSetup(bike.name)}
          </TextLink>
        ))}
      {onRemove !== undefined && (
        <div>
          <Button variant="default" onClick={onRemove}>
            {texts.removeArm}
          </Button>
        </div>
      )}
    </div>
  );
}

const choiceOf = (setup: Setup) => `${setup.revision}: ${setupWords(setup)} (${formatDay(setup.createdAt)})`;

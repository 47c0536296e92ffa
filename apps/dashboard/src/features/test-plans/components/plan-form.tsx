import { Button, Fieldset, Group, NativeSelect, Text, TextInput } from '@mantine/core';
import { useQueries } from '@tanstack/react-query';
import { useState, type FormEvent } from 'react';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { Fleet } from '../../../shared/http/reads/fleet.js';
import { setupHistoryQuery } from '../../../shared/http/reads/setups.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useMakePlan } from '../api/make-plan.js';
import {
  bikesOf,
  newArm,
  planErrors,
  planMessage,
  planSize,
  refusedPlan,
  type ArmValues,
  type PlanErrors,
  type PlanValues,
} from '../model/plan-form.js';
import { texts } from '../texts.js';
import { ArmFields, type BikeToRide } from './arm-fields.js';
import { PlanPreview } from './plan-preview.js';
import { RiderFields } from './rider-fields.js';
import { SizeFields } from './size-fields.js';
import classes from './plans.module.css';

/** The most that a plan takes. */
const MOST_ARMS = 8;
const FEWEST_ARMS = 2;

interface PlanFormProps {
  readonly teamId: string;
  readonly fleet: Fleet;
  readonly tracks: readonly Track[];
  readonly start: PlanValues;
  readonly onMade: (planId: string) => void;
}

/** Makes a plan; what it can tell stands above the button. */
export function PlanForm({ teamId, fleet, tracks, start, onMade }: PlanFormProps) {
  const make = useMakePlan(teamId);
  const [typed, setTyped] = useState(start);
  const [errors, setErrors] = useState<PlanErrors>({});
  const bikes = useBikesToRide(teamId, fleet, typed);
  const values = { ...typed, arms: typed.arms.map((arm, i) => withNow(arm, i, bikes)) };
  const change = (part: Partial<PlanValues>) => {
    setTyped((before) => ({ ...before, ...part }));
    // What was wrong with it is said of what stood there before.
    setErrors((before) =>
      Object.fromEntries(Object.entries(before).filter(([field]) => !((field.split('.')[0] ?? '') in part))),
    );
  };
  const changeArm = (index: number, arm: ArmValues) =>
    change({ arms: values.arms.map((other, i) => (i === index ? arm : other)) });

  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = planErrors(values);
    setErrors(found);
    if (Object.keys(found).length > 0) return;
    make.mutate(planMessage(values), {
      onSuccess: ({ id }) => onMade(id),
      onError: (error) => setErrors(refusedPlan(values, fieldErrors(error))),
    });
  };

  return (
    <form onSubmit={submit} noValidate className={classes.form}>
      <Fieldset legend={texts.what}>
        <div className={classes.pair}>
          <TextInput
            label={texts.name}
            description={texts.nameHint}
            autoComplete="off"
            value={values.name}
            error={errors['name']}
            onChange={(event) => change({ name: event.currentTarget.value })}
          />
          <NativeSelect
            label={texts.track}
            value={values.trackId}
            error={errors['trackId']}
            onChange={(event) => change({ trackId: event.currentTarget.value })}
            data={[
              ...(values.trackId === '' ? [{ value: '', label: '' }] : []),
              ...tracks.map(({ id, name }) => ({ value: id, label: name })),
            ]}
          />
          <TextInput
            label={texts.day}
            type="date"
            value={values.day}
            error={errors['day']}
            onChange={(event) => change({ day: event.currentTarget.value })}
          />
        </div>
        <RiderFields
          fleet={fleet}
          riders={values.riders}
          error={errors['riders']}
          onChange={(riders) => change({ riders })}
        />
      </Fieldset>
      <Fieldset legend={texts.arms}>
        <Text size="sm" c="dimmed" maw="60ch">
          {texts.armsLead}
        </Text>
        {values.arms.map((arm, i) => (
          <ArmFields
            key={arm.key}
            teamId={teamId}
            index={i}
            arm={arm}
            bikes={bikes}
            errors={errors}
            onChange={(changed) => changeArm(i, changed)}
            onRemove={
              i > 0 && values.arms.length > FEWEST_ARMS
                ? () => change({ arms: values.arms.filter((other) => other !== arm) })
                : undefined
            }
          />
        ))}
        {values.arms.length < MOST_ARMS && (
          <Button
            mt="sm"
            variant="default"
            onClick={() => change({ arms: [...values.arms, newArm(crypto.randomUUID(), '')] })}
          >
            {texts.addArm}
          </Button>
        )}
      </Fieldset>
      <Fieldset legend={texts.howMuch}>
        <SizeFields values={values} errors={errors} onChange={change} />
      </Fieldset>
      <Fieldset legend={texts.tells}>
        <PlanPreview teamId={teamId} size={planSize(values)} />
      </Fieldset>
      <Failure error={make.error} word={texts.notMade} />
      <Group>
        <Button type="submit" size="lg" loading={make.isPending}>
          {texts.make}
        </Button>
      </Group>
    </form>
  );
}

function useBikesToRide(teamId: string, fleet: Fleet, values: PlanValues): BikeToRide[] {
  const ridden = bikesOf(values).flatMap((id) => fleet.bikes.filter((bike) => bike.id === id));
  const histories = useQueries({ queries: ridden.map(({ id }) => setupHistoryQuery(teamId, id)) });
  return ridden.map((bike, i) => ({ bike, setups: histories[i]?.data }));
}

/** The first of what is tried is what is in the bikes now, until another is chosen. */
function withNow(arm: ArmValues, index: number, bikes: readonly BikeToRide[]): ArmValues {
  if (index > 0) return arm;
  const now = bikes.flatMap(({ bike, setups }) => {
    const [newest] = setups ?? [];
    return newest === undefined ? [] : [[bike.id, newest.id] as const];
  });
  return { ...arm, setups: { ...Object.fromEntries(now), ...arm.setups } };
}

import { Button, Checkbox, Group, NativeSelect, Stack, Textarea, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { PlannedSession } from '../../../shared/http/reads/planned-sessions.js';
import type { Rider } from '../../../shared/http/reads/riders.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useSavePlannedSession } from '../api/planned-sessions.js';
import { isDay } from '../model/weekend.js';
import { texts } from '../texts.js';
import classes from './weekend.module.css';

/** A test plan that can be ridden. */
export interface RidablePlan {
  readonly id: string;
  readonly name: string;
}

interface SessionFormProps {
  readonly teamId: string;
  readonly trackId: string;
  /** The day of a new one. */
  readonly day: string;
  readonly riders: readonly Rider[];
  readonly plans: readonly RidablePlan[];
  readonly session: PlannedSession | undefined;
  readonly onDone: () => void;
}

/** When a session is, who rides, and what. */
export function SessionForm(props: SessionFormProps) {
  const { teamId, trackId, day, riders, plans, session, onDone } = props;
  const save = useSavePlannedSession(teamId, session);
  const form = useForm({
    initialValues: {
      day: session?.day ?? day,
      startsAt: session?.startsAt ?? '',
      riderIds: session?.riderIds ?? riders.map(({ id }) => id),
      testPlanId: session?.testPlanId ?? '',
      note: session?.note ?? '',
    },
    validate: {
      day: (value) => (isDay(value) ? null : texts.noDay),
      startsAt: (value) => (/^\d\d:\d\d$/.test(value) ? null : texts.noClock),
      riderIds: (value) => (value.length > 0 ? null : texts.noRider),
    },
  });
  const submit = form.onSubmit(({ testPlanId, ...values }) =>
    save.mutate(
      { trackId, ...values, testPlanId: testPlanId === '' ? null : testPlanId },
      { onSuccess: onDone, onError: (error) => form.setErrors(fieldErrors(error)) },
    ),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack maw="40rem">
        <div className={classes.fields}>
          <TextInput type="date" label={texts.sessionDay} {...form.getInputProps('day')} />
          <TextInput
            type="time"
            label={texts.startsAt}
            description={texts.startsAtHint}
            {...form.getInputProps('startsAt')}
          />
        </div>
        <Checkbox.Group label={texts.riders} {...form.getInputProps('riderIds')}>
          <Group gap="lg" mt="xs">
            {riders.map(({ id, name }) => (
              <Checkbox key={id} size="lg" value={id} label={name} />
            ))}
          </Group>
        </Checkbox.Group>
        <NativeSelect
          label={texts.what}
          data={[
            { value: '', label: texts.rideAndLog },
            ...plans.map(({ id, name }) => ({ value: id, label: texts.planOf(name) })),
          ]}
          {...form.getInputProps('testPlanId')}
        />
        <Textarea label={texts.note} autosize minRows={1} {...form.getInputProps('note')} />
        <Failure error={save.error} word={texts.notSaved} />
        <Group>
          <Button type="submit" loading={save.isPending}>
            {texts.save}
          </Button>
          <Button variant="default" onClick={onDone}>
            {texts.cancel}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

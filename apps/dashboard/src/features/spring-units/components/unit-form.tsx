import { Button, Fieldset, Group, NativeSelect, Stack, Text } from '@mantine/core';
import { useForm, type UseFormReturnType } from '@mantine/form';
import { FIGURE_NAMES } from '../../../shared/format/figure-names.js';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Fields, numberInput } from '../../../shared/ui/form/fields.js';
import { obviousErrors, type FieldSpec } from '../../../shared/ui/form/field-spec.js';
import { NumberField } from '../../../shared/ui/number-field.js';
import { SOURCE_CHOICES } from '../../../shared/ui/sources.js';
import { useSaveSpringUnit } from '../api/save-spring-unit.js';
import { FIGURE_HINTS, figuresOf, type UnitFigure } from '../model/figures.js';
import { GENERIC_UNITS } from '../model/generic-units.js';
import { unitMessage, unitValues, withGeneric, type UnitValues } from '../model/unit-form.js';
import { LIMIT_FIELDS, NAME_FIELDS, texts } from '../texts.js';
import classes from './unit-form.module.css';

/** The figures that make the spring; the others hardly move the answer and stand one level down. */
const MAIN_FIGURES: readonly UnitFigure[] = [
  'strokeMm',
  'boreAreaMm2',
  'shaftAreaMm2',
  'positiveVolumeMl',
  'spacerVolumeMl',
  'negativeVolumeMl',
  'transferPositionMm',
  'lowerLegVolumeMl',
  'lowerLegAreaMm2',
];

const figureFields = (kind: string): FieldSpec[] =>
  figuresOf(kind === 'shock' ? 'shock' : 'fork').map((name) => ({
    name,
    label: FIGURE_NAMES[name].label,
    kind: 'number',
    required: true,
  }));

interface UnitFormProps {
  readonly teamId: string;
  readonly unit: SpringUnit | undefined;
  /** What a new unit is meant to be, where the page knows it. */
  readonly kind?: SpringUnit['kind'];
  readonly onSaved: () => void;
}

export function UnitForm({ teamId, unit, kind, onSaved }: UnitFormProps) {
  const save = useSaveSpringUnit(teamId, unit);
  const form = useForm<UnitValues>({
    initialValues: unitValues(unit, kind),
    validate: (values) =>
      obviousErrors([...NAME_FIELDS, ...LIMIT_FIELDS, ...figureFields(values.kind)], values),
  });
  const submit = form.onSubmit((values) =>
    save.mutate(unitMessage(values), {
      onSuccess: onSaved,
      onError: (error) => form.setErrors(fieldErrors(error)),
    }),
  );
  const figures = figuresOf(form.values.kind === 'shock' ? 'shock' : 'fork');
  const isMain = (figure: UnitFigure) => MAIN_FIGURES.includes(figure);
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        {unit === undefined && (
          <NativeSelect
            label={texts.start}
            description={texts.startHint}
            maw="32rem"
            data={[
              { value: '', label: texts.startNone },
              ...GENERIC_UNITS.filter((generic) => kind === undefined || generic.kind === kind).map(
                ({ id, label }) => ({ value: id, label }),
              ),
            ]}
            onChange={(event) => form.setValues(withGeneric(form.values, event.currentTarget.value))}
          />
        )}
        <Fields fields={NAME_FIELDS} form={form} />
        <Fieldset legend={texts.limits}>
          <Text size="sm" c="dimmed" mb="md">
            {texts.limitsHint}
          </Text>
          <Fields fields={LIMIT_FIELDS} form={form} />
        </Fieldset>
        <Fieldset legend={texts.figures}>
          <Figures figures={figures.filter(isMain)} form={form} />
        </Fieldset>
        <Fieldset legend={texts.fine}>
          <Figures figures={figures.filter((figure) => !isMain(figure))} form={form} />
        </Fieldset>
        <Failure error={save.error} />
        <Group>
          <Button type="submit" loading={save.isPending}>
            {texts.save}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

interface FiguresProps {
  readonly figures: readonly UnitFigure[];
  readonly form: UseFormReturnType<UnitValues>;
}

/** Each figure with its unit, and beside it where it comes from. */
function Figures({ figures, form }: FiguresProps) {
  return (
    <div className={classes.figures}>
      {figures.map((name) => {
        const { label, unit } = FIGURE_NAMES[name];
        return (
          <div key={name} className={classes.figure}>
            <NumberField
              label={label}
              description={FIGURE_HINTS[name]}
              unit={unit}
              {...numberInput(form.getInputProps(name))}
            />
            <NativeSelect
              aria-label={texts.sourceOf(label)}
              data={[...SOURCE_CHOICES]}
              {...form.getInputProps(`sources.${name}`)}
            />
          </div>
        );
      })}
    </div>
  );
}

import { Text, Title } from '@mantine/core';
import { useState } from 'react';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { Warning } from '../../../shared/ui/note.js';
import { Section } from '../../../shared/ui/page.js';
import { texts } from '../measure-texts.js';
import { assumedBehindNegative, assumedBehindPositive, isBoreAssumed } from '../model/assumed-of-unit.js';
import {
  boreArea,
  firstValues,
  NEW_EQUALISING,
  nextTry,
  type Equalising,
  type MeasureValues,
  type TwoReadings,
} from '../model/measure-form.js';
import { measuredFigures } from '../model/measured-unit.js';
import { AnswerPanel } from './answer-panel.js';
import { BenchFields, FigureFields, type MeasureFormProps } from './bench-fields.js';
import { NegativeResult } from './negative-result.js';
import { Steps } from './steps.js';
import { TryRows } from './try-rows.js';
import { useAnswers } from './use-answers.js';
import { VolumeResult } from './volume-result.js';
import { WaitTimer } from './wait-timer.js';
import { WriteMeasured } from './write-measured.js';

interface MeasureUnitProps {
  readonly teamId: string;
  readonly unit: SpringUnit;
  readonly canWrite: boolean;
  readonly onLookAgain: () => Promise<void>;
}

/** From an unknown unit to measured volumes, step by step. */
export function MeasureUnit({ teamId, unit, canWrite, onLookAgain }: MeasureUnitProps) {
  const [values, setValues] = useState(() => firstValues(unit));
  const { positive, negative, errors, isSettled } = useAnswers(teamId, unit, values);
  const form: MeasureFormProps = {
    values,
    errors,
    onChange: (part) => setValues((before) => ({ ...before, ...part })),
  };
  const figures = measuredFigures(unit, {
    positiveVolumeMl: positive.answer?.positiveVolumeMl ?? null,
    negativeVolumeMl: negative.answer?.negativeVolumeMl ?? null,
    boreAreaMm2: boreArea(values, unit),
  });
  return (
    <>
      <Section title={texts.first}>
        <Title order={3}>{texts.need}</Title>
        <Steps steps={texts.needs} ordered={false} />
        <Title order={3}>{texts.cautions}</Title>
        <Steps steps={texts.cautionList} ordered={false} />
      </Section>
      <Section title={texts.second}>
        <Title order={3}>{texts.setUp}</Title>
        <Text c="dimmed">{texts.setUpHint}</Text>
        <BenchFields {...form} />
        {isBoreAssumed(values, unit) && <Warning word={texts.boreWord}>{texts.boreAssumed}</Warning>}
        <Steps steps={texts.steps} />
        <WaitTimer />
        <TwoReadingRows {...form} />
        <AnswerPanel title={texts.result} missing={texts.resultNone} {...positive}>
          {(answer) => <VolumeResult answer={answer} ofUnit={assumedBehindPositive(values, unit)} />}
        </AnswerPanel>
      </Section>
      <Section title={texts.third}>
        <Steps steps={texts.thirdSteps} />
        {positive.answer?.positiveVolumeMl != null && positive.answer.sdMl !== null ? (
          <Text>
            {texts.against(
              formatNumber(positive.answer.positiveVolumeMl, 1),
              formatNumber(positive.answer.sdMl, 1),
            )}
          </Text>
        ) : (
          <>
            <Text>{texts.againstTyped}</Text>
            <FigureFields {...form} fields={['positiveVolumeMl', 'positiveVolumeSdMl']} />
          </>
        )}
        <WaitTimer />
        <EqualisingRows {...form} />
        <AnswerPanel title={texts.negativeResult} missing={texts.negativeNone} {...negative}>
          {(answer) => <NegativeResult answer={answer} ofUnit={assumedBehindNegative(values, unit)} />}
        </AnswerPanel>
      </Section>
      <Section title={texts.fourth}>
        <WriteMeasured
          teamId={teamId}
          unit={unit}
          figures={isSettled ? figures : []}
          canWrite={canWrite}
          onLookAgain={onLookAgain}
        />
      </Section>
    </>
  );
}

const READING_FIELDS = [
  { name: 'extendedPsi', label: texts.extended, unit: 'psi', hint: texts.afterWait },
  { name: 'travelMm', label: texts.travel, unit: 'mm', hint: texts.byRuler },
  { name: 'heldPsi', label: texts.held, unit: 'psi', hint: texts.afterWait },
] as const satisfies { name: keyof TwoReadings; label: string; unit: string; hint?: string }[];

function TwoReadingRows({ values, errors, onChange }: MeasureFormProps) {
  return (
    <TryRows
      path="tries"
      fields={READING_FIELDS}
      rows={values.tries}
      errors={errors}
      onChange={(tries: MeasureValues['tries']) => onChange({ tries })}
      newRow={() => nextTry(values.tries)}
    />
  );
}

const EQUALISING_FIELDS = [
  { name: 'beforePsi', label: texts.before, unit: 'psi' },
  { name: 'afterPsi', label: texts.after, unit: 'psi' },
] as const satisfies { name: keyof Equalising; label: string; unit: string }[];

function EqualisingRows({ values, errors, onChange }: MeasureFormProps) {
  return (
    <TryRows
      path="equalisings"
      fields={EQUALISING_FIELDS}
      rows={values.equalisings}
      errors={errors}
      onChange={(equalisings: MeasureValues['equalisings']) => onChange({ equalisings })}
      newRow={() => NEW_EQUALISING}
    />
  );
}

import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { negativeVolumeQuery } from '../api/identify-negative-volume.js';
import { volumeQuery } from '../api/identify-volume.js';
import { notNumbers, type MeasureValues } from '../model/measure-form.js';
import { negativeQuestion, negativeRefusals } from '../model/negative-question.js';
import { volumeQuestion, volumeRefusals } from '../model/volume-question.js';

/** Nobody reads an answer between two keys. */
const TYPING_PAUSE_MS = 400;

/** Asks for both volumes as soon as the readings allow, and tells at which field something is wrong. */
export function useAnswers(teamId: string, unit: SpringUnit, values: MeasureValues) {
  const [settled] = useDebouncedValue(values, TYPING_PAUSE_MS);
  const positiveAsked = useMemo(() => volumeQuestion(settled, unit), [settled, unit]);
  const positive = useQuery(volumeQuery(teamId, positiveAsked?.question ?? null));
  const found = positiveAsked === null ? undefined : positive.data;
  const negativeAsked = useMemo(() => negativeQuestion(settled, unit, found), [settled, unit, found]);
  const negative = useQuery(negativeVolumeQuery(teamId, negativeAsked?.question ?? null));
  const errors = {
    ...negativeRefusals(fieldErrors(negative.error), negativeAsked?.rows ?? []),
    ...volumeRefusals(fieldErrors(positive.error), positiveAsked?.rows ?? []),
    ...notNumbers(values),
  };
  return {
    positive: { query: positive, isAsked: positiveAsked !== null, answer: found },
    negative: {
      query: negative,
      isAsked: negativeAsked !== null,
      answer: negativeAsked === null ? undefined : negative.data,
    },
    errors,
    /** False for the moment in which the answers are still those of what stood there before. */
    isSettled: settled === values,
  };
}

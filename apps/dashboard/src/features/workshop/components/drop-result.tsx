import { Stack, Text, Title } from '@mantine/core';
import { figureName } from '../../../shared/format/figure-names.js';
import { formatCount, formatHeight, formatNumber } from '../../../shared/format/numbers.js';
import { Warning } from '../../../shared/ui/note.js';
import type { DropTestAnswer } from '../api/drop-test.js';
import { AIR_TEXTS, REFUSAL_TEXTS, texts, WARNING_TEXTS } from '../drop-texts.js';
import { fits } from '../model/fit.js';
import { AssumedFigures } from './assumed-figures.js';
import { SetUpTable } from './set-up-table.js';
import classes from './workshop.module.css';

const PER_CENT = 100;

/** What a drop test tells: absorption first, what speaks against it at once, then each set-up. */
export function DropResult({ answer }: { answer: DropTestAnswer }) {
  const { absorption, damping, reason, assumed } = answer;
  return (
    <Stack gap="md">
      {absorption === null ? (
        <Warning word={texts.refusedWord}>{reason !== null && REFUSAL_TEXTS[reason]}</Warning>
      ) : (
        <>
          <Absorption answer={answer} absorption={absorption} />
          <Doubts answer={answer} />
          {damping !== null && <Damping damping={damping} />}
          <Title order={3}>{texts.table}</Title>
          <SetUpTable setUps={answer.setUps} />
          {answer.atFullTravel > 0 && (
            <Text>{texts.atFullTravel(formatCount(answer.atFullTravel, 'landing'))}</Text>
          )}
        </>
      )}
      <AssumedFigures figures={assumed.map((name) => AIR_TEXTS[name] ?? figureName(name).label)} />
    </Stack>
  );
}

type Factor = NonNullable<DropTestAnswer['absorption']>;

function Absorption({ answer, absorption }: { answer: DropTestAnswer; absorption: Factor }) {
  const perCent = (share: number) => formatNumber(PER_CENT * share);
  const [example] = answer.setUps;
  return (
    <section>
      <Title order={3}>{texts.absorption}</Title>
      <div className={classes.answer}>
        {perCent(absorption.value)} <small>% of the drop</small>
      </div>
      <Text>{texts.interval(perCent(absorption.lower), perCent(absorption.upper))}</Text>
      {example !== undefined && (
        <Text c="dimmed" maw="60ch">
          {texts.absorptionHint(
            formatHeight(example.dropHeightM),
            formatHeight(example.dropHeightM * absorption.value),
          )}
        </Text>
      )}
    </section>
  );
}

/** Why order or scatter make it worthless, or that they give no reason to. */
function Doubts({ answer: { warnings, scatter, setUps } }: { answer: DropTestAnswer }) {
  if (warnings.length === 0) return <Text>{setUps.every(fits) ? texts.fine : texts.someDoNotFit}</Text>;
  return (
    <Warning word={texts.worthless}>
      <ul className={classes.list}>
        {warnings.map(({ code }) => (
          <li key={code}>{WARNING_TEXTS[code]}</li>
        ))}
      </ul>
      {scatter !== null && scatter > 1 && texts.scatter(formatNumber(scatter, 1))}
    </Warning>
  );
}

function Damping({ damping }: { damping: NonNullable<DropTestAnswer['damping']> }) {
  const times = (factor: number) => formatNumber(factor, 2);
  return (
    <section>
      <Title order={3}>{texts.damping}</Title>
      <Text maw="60ch">
        {damping.isTold
          ? texts.dampingTold(times(damping.value), times(damping.lower), times(damping.upper))
          : texts.dampingNot}
      </Text>
    </section>
  );
}

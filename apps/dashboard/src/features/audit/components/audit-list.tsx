import { Text } from '@mantine/core';
import { formatMoment } from '../../../shared/format/time.js';
import type { AuditEntry } from '../api/audit.js';
import { texts } from '../texts.js';
import classes from './audit.module.css';

/** One entry a row; on a phone the parts of a row stand below each other. */
export function AuditList({ entries }: { entries: readonly AuditEntry[] }) {
  return (
    <ol className={classes.entries}>
      {entries.map((entry) => (
        <li key={entry.id}>
          <Text size="sm" c="dimmed">
            <time dateTime={entry.at}>{formatMoment(entry.at)}</time>
          </Text>
          <Text size="sm">
            {entry.accountName ?? texts.service}
            {entry.client === 'token' && `, ${texts.byToken(entry.tokenName)}`}
          </Text>
          <div>
            <Text fw={600}>
              {texts.kinds[entry.kind]} {entry.action}
              {entry.recordName !== null && `: ${entry.recordName}`}
            </Text>
            {entry.fields.length > 0 && <Text size="sm">{entry.fields.map(inWords).join(', ')}</Text>}
          </div>
          <Text size="xs" c="dimmed" className={classes.request}>
            {entry.requestId !== null && `${texts.request} ${entry.requestId}`}
          </Text>
        </li>
      ))}
    </ol>
  );
}

const inWords = (field: string): string => field.replaceAll('_', ' ');

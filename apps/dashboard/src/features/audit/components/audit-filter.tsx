import { Group, NativeSelect } from '@mantine/core';
import type { AuditEntry, AuditFilter } from '../api/audit.js';
import { texts } from '../texts.js';

interface AuditFilterFieldsProps {
  readonly filter: AuditFilter;
  readonly onChange: (filter: AuditFilter) => void;
  readonly people: readonly { readonly accountId: string; readonly displayName: string }[];
}

export function AuditFilterFields({ filter, onChange, people }: AuditFilterFieldsProps) {
  const { kind, accountId } = filter;
  const choose = (next: { kind?: string; accountId?: string }) =>
    onChange({
      ...(next.kind && { kind: next.kind as AuditEntry['kind'] }),
      ...(next.accountId && { accountId: next.accountId }),
    });
  return (
    <Group align="end">
      <NativeSelect
        label={texts.kind}
        value={kind ?? ''}
        onChange={(event) => choose({ ...filter, kind: event.currentTarget.value })}
        data={[
          { value: '', label: texts.everyKind },
          ...Object.entries(texts.kinds).map(([value, label]) => ({ value, label })),
        ]}
      />
      <NativeSelect
        label={texts.person}
        value={accountId ?? ''}
        onChange={(event) => choose({ ...filter, accountId: event.currentTarget.value })}
        data={[
          { value: '', label: texts.everybody },
          ...people.map((person) => ({ value: person.accountId, label: person.displayName })),
        ]}
      />
    </Group>
  );
}

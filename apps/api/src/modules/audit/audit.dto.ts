import { ApiProperty } from '@nestjs/swagger';
import { ChoiceField, IdField, MomentField, TextField } from '../../platform/http/fields.js';
import { PageQuery, pageOf } from '../../platform/http/page.js';
import { AUDIT_ACTIONS, AUDIT_CLIENTS, AUDIT_KINDS } from './audit-entry.entity.js';

export class AuditQuery extends PageQuery {
  @ChoiceField({ description: 'Only changes of such records.', choices: AUDIT_KINDS, optional: true })
  kind?: (typeof AUDIT_KINDS)[number];

  @IdField({ description: 'Only changes by this account.', optional: true })
  accountId?: string;
}

export class AuditEntryDto {
  @IdField({ description: 'The entry.' })
  id: string;

  @MomentField({ description: 'When it was changed.', example: '2026-05-09T10:30:00Z' })
  at: string;

  @IdField({ description: 'The account that did it; null for the service itself.', nullable: true })
  accountId: string | null;

  @TextField({
    description: 'Name of the person at that time; null for the service itself.',
    maxLength: 80,
    nullable: true,
    example: 'Workshop',
  })
  accountName: string | null;

  @ChoiceField({ description: 'By a sign-in, by a token, or by the service itself.', choices: AUDIT_CLIENTS })
  client: (typeof AUDIT_CLIENTS)[number];

  @TextField({
    description: 'Name of the token, if it was one.',
    maxLength: 80,
    nullable: true,
    example: 'Timing import',
  })
  tokenName: string | null;

  @ChoiceField({ description: 'What was done.', choices: AUDIT_ACTIONS })
  action: (typeof AUDIT_ACTIONS)[number];

  @ChoiceField({ description: 'The kind of record.', choices: AUDIT_KINDS })
  kind: (typeof AUDIT_KINDS)[number];

  @IdField({ description: 'The record.' })
  recordId: string;

  @TextField({
    description: 'Name of the record now, if it has one.',
    maxLength: 80,
    nullable: true,
    example: 'Quarry Stairs',
  })
  recordName: string | null;

  @ApiProperty({
    type: 'array',
    items: { type: 'string' },
    example: ['altitude'],
    description: 'Names of the fields that were changed; what was in them is not recorded.',
  })
  fields: string[];

  @TextField({
    description: 'The request, as it is named in error answers and in the log; null for the service itself.',
    maxLength: 64,
    nullable: true,
    example: '0b7c7a9e-4f0d-4a53-9d0b-c1e2d3f4a5b6',
  })
  requestId: string | null;
}

export const AuditPageDto = pageOf(AuditEntryDto);

import type { AuditEntry } from './api/audit.js';

const KIND: Record<AuditEntry['kind'], string> = {
  'api-token': 'token',
  bike: 'bike',
  decision: 'decision record',
  'former-member': 'former member',
  invitation: 'link into the team',
  member: 'member',
  'planned-run': 'run of a test plan',
  rider: 'rider',
  run: 'run',
  session: 'session',
  setup: 'set-up',
  'spring-unit': 'fork or shock',
  team: 'team',
  'test-plan': 'test plan',
  track: 'track',
};

export const texts = {
  title: 'Audit',
  lead: 'Who changed what, and when. It names the fields that were changed, not what was in them, and nobody can edit it.',
  kind: 'Record',
  kinds: KIND,
  everyKind: 'every kind',
  person: 'Who',
  everybody: 'everybody',
  when: 'When',
  change: 'What',
  fields: 'Fields',
  byToken: (name: string | null) => `by token ${name ?? ''}`,
  service: 'the service itself',
  request: 'Request',
  older: 'Show older',
  none: 'Nothing here',
  noneLead: 'No change fits this choice.',
};

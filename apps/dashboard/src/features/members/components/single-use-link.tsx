import { Button, Group, Stack, Text, TextInput } from '@mantine/core';
import { useState } from 'react';
import { formatMoment } from '../../../shared/format/time.js';
import { QrCode } from '../../../shared/ui/qr-code.js';
import { texts } from '../texts.js';

interface SingleUseLinkProps {
  /** Path on this service, with its secret. */
  readonly path: string;
  readonly expiresAt: string;
}

/** A link that works once: to be scanned off this screen, or sent. */
export function SingleUseLink({ path, expiresAt }: SingleUseLinkProps) {
  const [copied, setCopied] = useState(false);
  const address = new URL(path, window.location.href).href;
  const copy = () => void navigator.clipboard.writeText(address).then(() => setCopied(true));
  return (
    <Stack gap="sm">
      <QrCode text={address} label={texts.qr} />
      <Group align="end" gap="sm">
        <TextInput
          label={texts.link}
          value={address}
          readOnly
          flex={1}
          onFocus={(event) => event.currentTarget.select()}
        />
        <Button variant="default" onClick={copy}>
          <span role="status">{copied ? texts.copied : texts.copy}</span>
        </Button>
      </Group>
      <Text size="sm" c="dimmed">
        {texts.endsAt(formatMoment(expiresAt))}
      </Text>
    </Stack>
  );
}

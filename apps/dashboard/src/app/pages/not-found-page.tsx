import { Empty } from '../../shared/ui/empty.js';
import { TextLink } from '../../shared/ui/link.js';
import { texts } from '../shell/texts.js';

export function NotFoundPage() {
  return (
    <Empty isPage title={texts.notFound} action={<TextLink to="/">{texts.toStart}</TextLink>}>
      {texts.notFoundLead}
    </Empty>
  );
}

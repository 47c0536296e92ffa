import { encode } from 'uqr';
import classes from './qr-code.module.css';

/** The blank margin that scanners need around a code, modules (ISO/IEC 18004). */
const QUIET_ZONE = 4;

interface QrCodeProps {
  readonly text: string;
  /** What the picture is, for those who hear it; the text itself must stand beside it. */
  readonly label: string;
}

/** A text as a square to scan: dark on light in both themes, since not every camera reads the other way round. */
export function QrCode({ text, label }: QrCodeProps) {
  const { size, data } = encode(text, { ecc: 'M', border: QUIET_ZONE });
  const dark = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])));
  return (
    <svg className={classes.code} viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label}>
      <rect className={classes.light} width={size} height={size} />
      <path className={classes.dark} d={dark.join('')} />
    </svg>
  );
}

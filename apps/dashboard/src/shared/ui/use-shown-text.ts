import { useState } from 'react';
import { shownText, textToStore } from '../format/entry.js';

/**
 * A figure that is held in the API's unit and typed in the chosen one. What was typed stays as it was typed, and what
 * was not touched stays as it was stored: a field never rounds.
 */
export function useShownText(unit: string | undefined, stored: string, onStored: (text: string) => void) {
  const [typed, setTyped] = useState({ shown: '', stored: '' });
  return {
    shown: typed.stored === stored ? typed.shown : shownText(unit, stored),
    type: (shown: string) => {
      const text = textToStore(unit, shown);
      setTyped({ shown, stored: text });
      onStored(text);
    },
  };
}

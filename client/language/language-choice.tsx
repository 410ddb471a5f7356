import { useState } from 'preact/hooks';
import {
  keepLanguage,
  LANGUAGE_CODES,
  LANGUAGE_NAMES,
  type LanguageCode,
  onScreen,
  speakOnScreen,
} from './languages.ts';
import './language.css';

/** The language of this phone's screens, its voice, and what is typed on it. The other phone has its own. */
export function LanguageChoice() {
  const [failed, setFailed] = useState(false);
  const { code: chosen } = onScreen();
  const choose = async (code: LanguageCode) => {
    const isHere = await speakOnScreen(code);
    if (isHere) keepLanguage(code);
    else setFailed(true);
  };
  return (
    <fieldset class="languages">
      <legend>Language of this phone</legend>
      {LANGUAGE_CODES.map((code) => (
        <button
          key={code}
          type="button"
          class="button"
          lang={code}
          translate={false}
          aria-pressed={code === chosen}
          onClick={() => void choose(code)}
        >
          {LANGUAGE_NAMES[code]}
        </button>
      ))}
      {!chosen.startsWith('en') && (
        <p class="hint">
          Nobody who grew up with this language has checked it yet. Speaking is understood in English only:
          type, or use the buttons. The supervisor's pages and the report are English.
        </p>
      )}
      {failed && (
        <p class="failure" role="alert">
          This language could not be loaded. Try again when there is a link.
        </p>
      )}
    </fieldset>
  );
}

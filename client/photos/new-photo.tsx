import { useState } from 'preact/hooks';
import { PHOTO_BYTES_MOST, PhotoShows } from '../../src/model/photo.ts';
import {
  CHOOSE_PHOTO,
  KEEP_PHOTO,
  NO_PICTURE_FILE,
  SHOWS_WORDS,
  TAKE_PHOTO,
  THROW_AWAY,
} from '../../src/phrases/photos.ts';
import { Failure } from '../ui/failure.tsx';
import { Field } from '../ui/field.tsx';
import { type SmallPhoto, shrink } from './shrink.ts';
import { useObjectUrl } from './use-object-url.ts';

/** A photo that a person wants in the record. */
export interface Wanted extends SmallPhoto {
  readonly shows: PhotoShows;
  readonly caption?: string;
}

/** Takes or chooses a picture, asks what it is of, and gives it on. `onKeep` resolves to true when it was taken. */
export function NewPhoto({
  busy = false,
  onKeep,
}: {
  busy?: boolean;
  onKeep: (photo: Wanted) => Promise<boolean>;
}) {
  const [small, setSmall] = useState<SmallPhoto>();
  const [trouble, setTrouble] = useState<string>();
  const choose = async (file: File | undefined) => {
    if (!file) return;
    setTrouble(undefined);
    try {
      setSmall(await shrink(file, PHOTO_BYTES_MOST));
    } catch {
      setTrouble(NO_PICTURE_FILE);
    }
  };
  if (small) {
    return (
      <Describe
        small={small}
        busy={busy}
        onThrowAway={() => setSmall(undefined)}
        onKeep={async (wanted) => {
          if (await onKeep(wanted)) setSmall(undefined);
        }}
      />
    );
  }
  return (
    <div class="new-photo">
      <FileButton label={TAKE_PHOTO} main camera onFile={choose} />
      <FileButton label={CHOOSE_PHOTO} onFile={choose} />
      <Failure text={trouble} />
    </div>
  );
}

interface FileButtonProps {
  label: string;
  main?: boolean;
  /** Opens the camera where the phone has one. */
  camera?: boolean;
  onFile: (file: File | undefined) => void;
}

function FileButton({ label, main, camera, onFile }: FileButtonProps) {
  return (
    <label class={main ? 'button main photo-file' : 'button photo-file'}>
      {label}
      <input
        type="file"
        accept="image/*"
        {...(camera && { capture: 'environment' })}
        onChange={({ currentTarget }) => {
          onFile(currentTarget.files?.[0]);
          // The same file chosen again is a new choice.
          currentTarget.value = '';
        }}
      />
    </label>
  );
}

interface DescribeProps {
  small: SmallPhoto;
  busy: boolean;
  onKeep: (photo: Wanted) => void;
  onThrowAway: () => void;
}

function Describe({ small, busy, onKeep, onThrowAway }: DescribeProps) {
  const url = useObjectUrl(small.blob);
  const [shows, setShows] = useState<PhotoShows>();
  const [caption, setCaption] = useState('');
  const words = caption.trim();
  return (
    <div class="new-photo">
      {url && <img class="photo-preview" src={url} alt="" width={small.width} height={small.height} />}
      <fieldset class="photo-shows">
        <legend>What does it show?</legend>
        {PhotoShows.options.map((each) => (
          <button
            key={each}
            type="button"
            class="button"
            aria-pressed={each === shows}
            onClick={() => setShows(each)}
          >
            {SHOWS_WORDS[each]}
          </button>
        ))}
      </fieldset>
      <Field label="In your words, if you like" value={caption} maxLength={200} onInput={setCaption} />
      <button
        type="button"
        class="button main"
        disabled={busy || !shows}
        onClick={() => shows && onKeep({ ...small, shows, ...(words && { caption: words }) })}
      >
        {KEEP_PHOTO}
      </button>
      <button type="button" class="button" disabled={busy} onClick={onThrowAway}>
        {THROW_AWAY}
      </button>
    </div>
  );
}

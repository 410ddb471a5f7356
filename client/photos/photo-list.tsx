import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Seq } from '../../src/model/ids.ts';
import {
  photoText,
  REMOVE_ADVICE,
  REMOVE_PHOTO,
  removedText,
  takenText,
  WHY_REMOVE,
} from '../../src/phrases/photos.ts';
import type { Photo } from '../../src/visit/photos.ts';
import { moment } from '../browser/times.ts';
import { Failure } from '../ui/failure.tsx';
import { Field } from '../ui/field.tsx';
import { Picture } from './picture.tsx';
import type { PhotoOwner } from './requests.ts';

interface ListProps {
  owner: PhotoOwner;
  photos: readonly Photo[];
  /** Undefined: nobody here can remove that photo. Resolves to true when it was removed. */
  remove?: (photo: Photo) => ((why: string) => Promise<boolean>) | undefined;
  failure?: string | undefined;
}

/** The photos of a record, oldest first, with what became of those that were removed. */
export function PhotoList({ owner, photos, remove, failure }: ListProps) {
  const [removing, setRemoving] = useState<Seq>();
  return (
    <ul class="photos">
      {photos.map((photo) => (
        <li key={photo.seq}>
          {photo.removed ? (
            <p class="hint">{removedText(photoText(photo), photo.removed.why, photo.removed.seq)}</p>
          ) : (
            <Shown owner={owner} photo={photo}>
              <Removal
                remove={remove?.(photo)}
                open={removing === photo.seq}
                onOpen={(open) => setRemoving(open ? photo.seq : undefined)}
                failure={failure}
              />
            </Shown>
          )}
        </li>
      ))}
    </ul>
  );
}

function Shown({ owner, photo, children }: { owner: PhotoOwner; photo: Photo; children: ComponentChildren }) {
  const { seq, at, by, width, height } = photo;
  const text = photoText(photo);
  return (
    <figure class="photo">
      <Picture owner={owner} seq={seq} alt={text} width={width} height={height} />
      <figcaption>
        {text}
        <small>{takenText(moment(at), by, seq)}</small>
      </figcaption>
      {children}
    </figure>
  );
}

interface RemovalProps {
  remove: ((why: string) => Promise<boolean>) | undefined;
  open: boolean;
  onOpen: (open: boolean) => void;
  failure: string | undefined;
}

const SHORTEST = 3;

function Removal({ remove, open, onOpen, failure }: RemovalProps) {
  const [why, setWhy] = useState('');
  const words = why.trim();
  if (!remove) return null;
  if (!open) {
    return (
      <button type="button" class="button" onClick={() => onOpen(true)}>
        {REMOVE_PHOTO}
      </button>
    );
  }
  const submit = async (event: Event) => {
    event.preventDefault();
    if (words.length >= SHORTEST && (await remove(words))) onOpen(false);
  };
  return (
    <form class="photo-removal" onSubmit={submit}>
      <p>{REMOVE_ADVICE}</p>
      <Field label={WHY_REMOVE} value={why} maxLength={500} onInput={setWhy} />
      <Failure text={failure} />
      <button type="submit" class="button danger" disabled={words.length < SHORTEST}>
        {REMOVE_PHOTO}
      </button>
      <button type="button" class="button" onClick={() => onOpen(false)}>
        Keep it
      </button>
    </form>
  );
}

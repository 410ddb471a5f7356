import {
  FORGET_PHOTO,
  NO_PHOTOS,
  NOT_SENT,
  NOT_SENT_UNSAFE,
  PHOTO_ADVICE,
  PHOTO_CHANGES_SIGNED,
  PHOTOS_TITLE,
  photoText,
  refusedPhoto,
} from '../../src/phrases/photos.ts';
import type { Photo } from '../../src/visit/photos.ts';
import { useSend } from '../browser/use-send.ts';
import type { SavedSeat } from '../saved/saved-seats.ts';
import { Sheet } from '../ui/sheet.tsx';
import { NewPhoto } from './new-photo.tsx';
import { PhotoList } from './photo-list.tsx';
import { removePhoto } from './requests.ts';
import { useObjectUrl } from './use-object-url.ts';
import { useWaiting } from './use-waiting.ts';
import type { WaitingPhoto } from './waiting.ts';
import './photos.css';

interface SheetProps {
  seat: SavedSeat;
  photos: readonly Photo[];
  linked: boolean;
  /** Somebody has signed the record, and it is as it was then. */
  signed: boolean;
  onClose: () => void;
}

/** The photos of a crew: takes new ones, keeps them until they are sent, and shows those of the record. */
export function PhotoSheet({ seat, photos, linked, signed, onClose }: SheetProps) {
  const { token } = seat;
  const waiting = useWaiting(seat, photos.length);
  const { failure, send } = useSend();
  const remove = ({ by, seq }: Photo) =>
    by === seat.seat && !signed && linked
      ? (why: string) => send({ photo: seq, why }, (id, body) => removePhoto({ token }, { ...body, id }))
      : undefined;
  return (
    <Sheet title={PHOTOS_TITLE} onClose={onClose}>
      {signed && <p class="failure">{PHOTO_CHANGES_SIGNED}</p>}
      <p>{PHOTO_ADVICE}</p>
      <NewPhoto onKeep={waiting.add} />
      {photos.length + waiting.photos.length === 0 && <p>{NO_PHOTOS}</p>}
      {waiting.photos.map((photo) => (
        <Waits key={photo.id} photo={photo} safe={waiting.safe} onForget={() => waiting.forget(photo)} />
      ))}
      <PhotoList owner={{ token }} photos={photos} remove={remove} failure={failure} />
    </Sheet>
  );
}

interface WaitsProps {
  photo: WaitingPhoto;
  safe: boolean;
  onForget: () => void;
}

function Waits({ photo, safe, onForget }: WaitsProps) {
  const { picture, width, height, refused } = photo;
  const url = useObjectUrl(picture);
  return (
    <figure class="photo waits">
      {url && <img src={url} alt={photoText(photo)} width={width} height={height} />}
      <figcaption>{photoText(photo)}</figcaption>
      {refused === undefined ? (
        <p class="hint">{safe ? NOT_SENT : NOT_SENT_UNSAFE}</p>
      ) : (
        <>
          <p class="failure">{refusedPhoto(refused)}</p>
          <button type="button" class="button" onClick={onForget}>
            {FORGET_PHOTO}
          </button>
        </>
      )}
    </figure>
  );
}

import { NO_PHOTOS, PHOTOS_TITLE } from '../../src/phrases/photos.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import { useSend } from '../browser/use-send.ts';
import { NewPhoto, type Wanted } from '../photos/new-photo.tsx';
import { PhotoList } from '../photos/photo-list.tsx';
import { removePhoto, sendPhoto } from '../photos/requests.ts';
import { Failure } from '../ui/failure.tsx';
import type { WriteTo } from './use-write.ts';
import '../photos/photos.css';

interface Props extends WriteTo {
  record: VisitRecord;
  desk: boolean;
}

/** The photos of a visit; the desk can add one, and remove any. */
export function PhotoSection({ token, job, record, desk, onWritten }: Props) {
  const { setup, photos } = record.state;
  const adding = useSend();
  const removing = useSend();
  const owner = { token, visit: job };
  if (!setup) return null;
  const add = async ({ blob, ...photo }: Wanted) => {
    const taken = await adding.send(photo, (id, { shows, caption }) =>
      sendPhoto(owner, { id, shows, caption }, blob),
    );
    if (taken) onWritten();
    return taken;
  };
  const remove = desk
    ? (photo: number) => async (why: string) => {
        const gone = await removing.send({ photo, why }, (id, body) => removePhoto(owner, { ...body, id }));
        if (gone) onWritten();
        return gone;
      }
    : undefined;
  return (
    <section aria-labelledby="photos-title" class="visit-photos">
      <h2 id="photos-title">{PHOTOS_TITLE}</h2>
      {photos.length === 0 && <p>{NO_PHOTOS}</p>}
      <PhotoList
        owner={owner}
        photos={photos}
        remove={({ seq }) => remove?.(seq)}
        failure={removing.failure}
      />
      {desk && (
        <details class="more">
          <summary>Add a photo</summary>
          <NewPhoto busy={adding.busy} onKeep={add} />
          <Failure text={adding.failure} />
        </details>
      )}
    </section>
  );
}

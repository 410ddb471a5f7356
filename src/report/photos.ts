import type { JobId } from '../model/ids.ts';
import { HEADINGS } from '../phrases/headings.ts';
import { PICTURES_LEFT_OUT, photoText, removedText, takenText } from '../phrases/photos.ts';
import { kept, type Photo } from '../visit/photos.ts';
import type { Moments } from './moments.ts';
import type { Block, Part, ReportPhoto } from './report.ts';

/** The photos of a visit, and what became of those that were removed; nothing where nobody took any. */
export function photoBlocks(photos: readonly Photo[], job: JobId, moments: Moments): Block[] {
  if (photos.length === 0) return [];
  return [
    {
      kind: 'photos',
      title: HEADINGS.photos,
      photos: kept(photos).map((photo): ReportPhoto => {
        const { seq, at, by, width, height, bytes } = photo;
        const alt = photoText(photo);
        const taken = takenText(moments.moment(at), by, seq);
        return { job, photo: seq, bytes, width, height, alt, caption: `${alt}. ${taken}` };
      }),
      gone: photos.flatMap((photo) =>
        photo.removed ? [removedText(photoText(photo), photo.removed.why, photo.removed.seq)] : [],
      ),
    },
  ];
}

/** All photos of a part. */
export const photosIn = ({ blocks }: Part): readonly ReportPhoto[] =>
  blocks.flatMap((block) => (block.kind === 'photos' ? block.photos : []));

/** The same part with words only where it has photos, and why. */
export const withoutPictures = (part: Part): Part => ({
  ...part,
  blocks: part.blocks.map((block) =>
    block.kind === 'photos' && block.photos.length > 0
      ? {
          ...block,
          photos: [],
          gone: [...block.photos.map(({ caption }) => caption), PICTURES_LEFT_OUT, ...block.gone],
        }
      : block,
  ),
});

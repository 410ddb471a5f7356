import type { JobId, MessageId, Seq } from '../../src/model/ids.ts';
import type { PhotoShows } from '../../src/model/photo.ts';
import { Logged } from '../../src/protocol/site.ts';
import { ask, request } from '../browser/requests.ts';

/** Whose photos: those of a seat's or watcher's own job, or of a visit to a site. */
export interface PhotoOwner {
  readonly token: string;
  /** The visit, where the token is of a site. */
  readonly visit?: JobId;
}

interface NewPhoto {
  readonly id: MessageId;
  readonly shows: PhotoShows;
  readonly caption?: string | undefined;
}

/** @throws {ApiError} */
export const sendPhoto = (
  owner: PhotoOwner,
  { id, shows, caption }: NewPhoto,
  picture: Blob,
): Promise<Logged> =>
  request(addressOf(owner, { id, shows, ...(caption && { caption }) }), Logged, {
    token: owner.token,
    body: picture,
  });

/** @throws {ApiError} */
export const fetchPhoto = async (owner: PhotoOwner, seq: Seq): Promise<Blob> =>
  (await ask(addressOf(owner, { seq: String(seq) }), { token: owner.token })).blob();

/** @throws {ApiError} */
export const removePhoto = (
  { token, visit }: PhotoOwner,
  removal: { id: MessageId; photo: Seq; why: string },
): Promise<Logged> =>
  request(`${baseOf(visit)}/remove`, Logged, { token, body: { ...removal, ...(visit && { job: visit }) } });

const baseOf = (visit: JobId | undefined): string => (visit === undefined ? '/api/photo' : '/api/site/photo');

const addressOf = ({ visit }: PhotoOwner, query: Record<string, string>): string =>
  `${baseOf(visit)}?${new URLSearchParams({ ...query, ...(visit && { job: visit }) })}`;

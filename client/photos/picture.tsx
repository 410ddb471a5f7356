import { useEffect, useState } from 'preact/hooks';
import type { Seq } from '../../src/model/ids.ts';
import { fetchPhoto, type PhotoOwner } from './requests.ts';
import { useObjectUrl } from './use-object-url.ts';

interface PictureProps {
  owner: PhotoOwner;
  seq: Seq;
  alt: string;
  /** Pixels: the page keeps the room for it while it loads. */
  width: number;
  height: number;
}

/** A photo of the record, fetched with the key that opens it; or why it cannot be shown. */
export function Picture({ owner, seq, alt, width, height }: PictureProps) {
  const { token, visit } = owner;
  const [picture, setPicture] = useState<Blob>();
  const [trouble, setTrouble] = useState<string>();
  const url = useObjectUrl(picture);
  useEffect(() => {
    let left = false;
    fetchPhoto({ token, ...(visit && { visit }) }, seq).then(
      (blob) => left || setPicture(blob),
      (error: Error) => left || setTrouble(error.message),
    );
    return () => {
      left = true;
    };
  }, [token, visit, seq]);
  if (trouble) return <p class="picture-lost">{trouble}</p>;
  const frame = { width, height, style: { aspectRatio: `${width} / ${height}` } };
  return url ? <img src={url} alt={alt} {...frame} /> : <span class="picture-room" {...frame} />;
}

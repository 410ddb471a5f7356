import { useEffect, useState } from 'preact/hooks';
import type { Seq } from '../../src/model/ids.ts';
import { fetchPhoto, type PhotoOwner } from './requests.ts';

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
  const [shown, setShown] = useState<{ url?: string; trouble?: string }>({});
  useEffect(() => {
    let url: string | undefined;
    let left = false;
    fetchPhoto({ token, ...(visit && { visit }) }, seq).then(
      (blob) => {
        if (left) return;
        url = URL.createObjectURL(blob);
        setShown({ url });
      },
      (error: Error) => left || setShown({ trouble: error.message }),
    );
    return () => {
      left = true;
      if (url) URL.revokeObjectURL(url);
    };
  }, [token, visit, seq]);
  if (shown.trouble) return <p class="picture-lost">{shown.trouble}</p>;
  const frame = { width, height, style: { aspectRatio: `${width} / ${height}` } };
  return shown.url ? <img src={shown.url} alt={alt} {...frame} /> : <span class="picture-room" {...frame} />;
}

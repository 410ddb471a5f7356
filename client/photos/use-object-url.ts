import { useEffect, useState } from 'preact/hooks';

/** An address at which this page can show a picture; undefined until there is one. It is given back when it is no longer shown. */
export function useObjectUrl(picture: Blob | undefined): string | undefined {
  const [url, setUrl] = useState<string>();
  useEffect(() => {
    if (!picture) return;
    const made = URL.createObjectURL(picture);
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [picture]);
  return url;
}

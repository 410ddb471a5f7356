import type { Notice } from '../../src/phrases/no-page.ts';

/** A page without any of our files: for when they are missing, or not to be had. */
export const noticePage = ({ title, text, start }: Notice): string => `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${title}</title>
<h1>${title}</h1>
<p>${text}</p>
${start ? `<p><a href="/">${start}</a></p>\n` : ''}</html>
`;

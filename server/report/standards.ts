/** The extension schema that PDF/A asks for before a file may also name PDF/UA (ISO 19005-2, 6.6.2.3.3). */
const PDF_UA = `
<rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
  <pdfuaid:part>1</pdfuaid:part>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
    xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
  <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
    <pdfaSchema:schema>PDF/UA Universal Accessibility Schema</pdfaSchema:schema>
    <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
    <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
    <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
      <pdfaProperty:name>part</pdfaProperty:name>
      <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
      <pdfaProperty:category>internal</pdfaProperty:category>
      <pdfaProperty:description>Indicates, which part of ISO 14289 standard is followed</pdfaProperty:description>
    </rdf:li></rdf:Seq></pdfaSchema:property>
  </rdf:li></rdf:Bag></pdfaExtension:schemas>
</rdf:Description>`;

/** Lets a file of PDF/A say that it follows PDF/UA-1 too, and its title hold any letter. */
export function identify(doc: PDFKit.PDFDocument): void {
  doc.appendXML(PDF_UA);
  // PDFKit copies the title into the XML as it is. The other copy of it is written before this.
  const endSubset = doc.endSubset.bind(doc);
  doc.endSubset = () => {
    doc.info.Title = escaped(doc.info.Title ?? '');
    endSubset();
  };
}

/** What PDFKit keeps of a bookmark, which its types leave out. */
interface Bookmark {
  readonly children: readonly Bookmark[];
  readonly outlineData: { Count?: number };
}

/**
 * Says how many bookmarks lie under each one that has some: below zero, because it is folded up at first (ISO 32000-1, table
 * 153). PDFKit leaves the number out. Call it before the file is ended.
 */
export function countBookmarks(doc: PDFKit.PDFDocument): void {
  const top = doc.outline as unknown as Bookmark;
  if (top.children.length > 0) top.outlineData.Count = top.children.length;
  for (const { children, outlineData } of top.children) {
    if (children.length > 0) outlineData.Count = -children.length;
  }
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };
const escaped = (text: string): string => text.replace(/[&<>]/g, (sign) => ENTITIES[sign] as string);

/**
 * `imsmanifest.xml` by SCORM 1.2 (ADL 2001) and by SCORM 2004, 4th edition (ADL 2009).
 * No schema file is named: the package holds none, and a system knows the namespaces.
 * No mastery score: with one, a system would mark an unfinished visit as failed. Passed or failed is said by the page.
 */
import { escaped, type Outline, resources } from "./package-outline.ts";

export const scorm12Manifest = (outline: Outline): string => `<?xml version="1.0" encoding="UTF-8"?>
<manifest identifier="${escaped(outline.id)}" version="${escaped(outline.version)}"
  xmlns="http://www.imsproject.org/xsd/imscp_rootv1p1p2"
  xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_rootv1p2">
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>1.2</schemaversion>
  </metadata>
  <organizations default="course">
    <organization identifier="course">
${items(outline)}
    </organization>
  </organizations>
${resources(outline, "scormtype")}
</manifest>
`;

export const scorm2004Manifest = (outline: Outline): string => `<?xml version="1.0" encoding="UTF-8"?>
<manifest identifier="${escaped(outline.id)}" version="${escaped(outline.version)}"
  xmlns="http://www.imsglobal.org/xsd/imscp_v1p1"
  xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_v1p3"
  xmlns:imsss="http://www.imsglobal.org/xsd/imsss">
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>2004 4th Edition</schemaversion>
  </metadata>
  <organizations default="course">
    <organization identifier="course">
${items(outline)}
      <imsss:sequencing>
        <imsss:controlMode choice="true" flow="true"/>
      </imsss:sequencing>
    </organization>
  </organizations>
${resources(outline, "scormType")}
</manifest>
`;

const items = ({ title, items }: Outline): string =>
  [
    `      <title>${escaped(title)}</title>`,
    ...items.map(
      (item) => `      <item identifier="item-${item.id}" identifierref="page-${item.id}" isvisible="true">
        <title>${escaped(item.title)}</title>
      </item>`,
    ),
  ].join("\n");

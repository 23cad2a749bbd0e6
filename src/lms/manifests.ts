/** The files that describe a package to a course system, as SCORM 1.2 and cmi5 (Quartz) specify. */

import { present } from "../sim/checked/present.ts";
import { PASS_SHARE } from "./record-adapter.ts";

export interface Course {
  readonly id: string;
  readonly version: string;
  readonly title: string;
  readonly description: string;
  /** Of title and description. */
  readonly language: string;
  /** Address within the package, query included. */
  readonly launch: string;
  /** Every file of the package but the manifests. */
  readonly files: readonly string[];
}

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => present({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" }[sign]));

/** SCORM 1.2 (ADL 2001), one shareable content object. No mastery score: with one, a system would mark an unfinished visit as failed. */
export const scormManifest = ({
  id,
  version,
  title,
  launch,
  files,
}: Course): string => `<?xml version="1.0" encoding="UTF-8"?>
<manifest identifier="${escaped(id)}" version="${escaped(version)}"
  xmlns="http://www.imsproject.org/xsd/imscp_rootv1p1p2"
  xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_rootv1p2"
  xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
  xsi:schemaLocation="http://www.imsproject.org/xsd/imscp_rootv1p1p2 imscp_rootv1p1p2.xsd http://www.adlnet.org/xsd/adlcp_rootv1p2 adlcp_rootv1p2.xsd">
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>1.2</schemaversion>
  </metadata>
  <organizations default="course">
    <organization identifier="course">
      <title>${escaped(title)}</title>
      <item identifier="lessons" identifierref="page" isvisible="true">
        <title>${escaped(title)}</title>
      </item>
    </organization>
  </organizations>
  <resources>
    <resource identifier="page" type="webcontent" adlcp:scormtype="sco" href="${escaped(launch)}">
${files.map((file) => `      <file href="${escaped(file)}"/>`).join("\n")}
    </resource>
  </resources>
</manifest>
`;

/** cmi5 course structure, one assignable unit. */
export const courseStructure = ({
  id,
  title,
  description,
  language,
  launch,
}: Course): string => `<?xml version="1.0" encoding="UTF-8"?>
<courseStructure xmlns="https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd">
  <course id="urn:${escaped(id)}:course">
    <title><langstring lang="${language}">${escaped(title)}</langstring></title>
    <description><langstring lang="${language}">${escaped(description)}</langstring></description>
  </course>
  <au id="urn:${escaped(id)}:lessons" moveOn="CompletedOrPassed" masteryScore="${PASS_SHARE}">
    <title><langstring lang="${language}">${escaped(title)}</langstring></title>
    <description><langstring lang="${language}">${escaped(description)}</langstring></description>
    <url>${escaped(launch)}</url>
  </au>
</courseStructure>
`;

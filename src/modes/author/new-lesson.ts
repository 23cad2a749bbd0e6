/** What a new lesson begins with: two steps that run. */
export const NEW_LESSON = {
  name: "New lesson",
  text: `---
id: new-lesson
number: 90
title: One tube, two widths
reader: parents before an operation
aim: see why a narrow place costs pressure
remember: Narrow places cost pressure.
minutes: 3
---

## A wide tube {#wide}

\`\`\`scene
stage: extracardiac
set: { conduitDiameter: 18 }
\`\`\`

### plain
Blood from the legs flows up this tube. It loses {{ pathway.pressureDrop | mmHg 2 }} of pressure.

## A narrow tube {#narrow}

\`\`\`scene
set: { conduitDiameter: 10 }
\`\`\`

### plain
Now the tube is narrow. [The blood loses more pressure.]{claim: pathway.pressureDrop rises from previous}
`,
} as const;

/** The settings at the top of an invented lesson. */
export const frontOf = ({ minutes = 3, reader = "parents" } = {}): string => `---
id: a-lesson
number: 1
title: T
reader: ${reader}
aim: to see it
remember: It costs.
minutes: ${minutes}
---
`;

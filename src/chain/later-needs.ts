/** What only further scenes need, in a piece of its own: the pathway's page does not wait for it. */
export { exchangeCourses } from "./exchange-courses.ts";
export { legValves } from "./leg-valves.ts";
export { squeezeMoment } from "./squeeze-moment.ts";

/** Places the circulation worker's code right behind what the page shares with it: so near each other the two pack as one. */
import "../sim/geometry/pathways/sections.ts";
import "../sim/circulation/check-request.ts";
import "./circulation-worker.ts?worker&inline";

// The package names no file for Node; its types are at its name.
declare module "@xapi/cmi5/dist/Cmi5.esm.js" {
  export { default } from "@xapi/cmi5";
}

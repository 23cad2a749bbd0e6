/** What a course system answers to one launched unit: the token once, the record store's resources (xAPI 1.0.3), the rules of cmi5. */
import { faultsOfStatement, type LaunchRules, nameOf, type Statement } from "../cmi5-rules.ts";

export interface Enrolled {
  readonly activityId: string;
  readonly registration: string;
  readonly actor: object;
  /** State documents by name; `LMS.LaunchData` is the course system's own. */
  readonly documents: Map<string, string>;
  /** Kept in all sessions. */
  readonly statements: Statement[];
}

export interface CourseSession {
  readonly token: string;
  /** Of this session. */
  readonly statements: readonly Statement[];
  /** What was refused, and why. */
  readonly refused: readonly string[];
  /** Method and path of each request. */
  readonly asked: readonly string[];
  answer(request: Request): Promise<Response>;
}

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i;
const VERSION = "1.0.3";

/** @param fetchPath where the token is fetched; all else lies below `endpoint` */
export function courseSession(
  enrolled: Enrolled,
  launch: LaunchRules,
  {
    fetchPath,
    endpoint,
    token,
  }: { readonly fetchPath: string; readonly endpoint: string; readonly token: string },
): CourseSession {
  const { activityId, registration, actor, documents } = enrolled;
  const earlier = [...enrolled.statements];
  const statements: Statement[] = [];
  const refused: string[] = [];
  const asked: string[] = [];
  let fetched = false;
  const refuse = (status: number, why: string) => {
    refused.push(why);
    return new Response(why, { status });
  };

  function giveToken(method: string): Response {
    if (method !== "POST") return refuse(405, `8.2.1: the token is fetched by POST, not ${method}`);
    if (fetched) {
      refused.push("8.2.3: the token is given once");
      return Response.json({ "error-code": "1", "error-text": "The token was given already." });
    }
    fetched = true;
    return Response.json({ "auth-token": token });
  }

  function keep(found: unknown, id: string | null): Response {
    const statement = found as Statement;
    const key = statement.id ?? id ?? "";
    const known = [...earlier, ...statements].find((each) => each.id === key);
    if (known) return refuse(409, `a statement with the id ${key} is there`);
    const faults = [
      ...(UUID.test(key) ? [] : [`9.1: an id that is a UUID, found ${key}`]),
      ...(JSON.stringify(statement.actor) === JSON.stringify(actor) ? [] : ["9.2: the launched actor"]),
      ...(statement.context?.registration === registration ? [] : ["9.6.1: the launched registration"]),
      ...faultsOfStatement(statement, { session: statements, earlier }, { ...launch, activityId }),
    ];
    if (faults.length > 0) return refuse(403, `${nameOf(statement)}: ${faults.join("; ")}`);
    const kept = { ...statement, id: key };
    statements.push(kept);
    enrolled.statements.push(kept);
    return id === null ? Response.json([key]) : new Response(null, { status: 204 });
  }

  async function state(request: Request, query: URLSearchParams): Promise<Response> {
    const place = [query.get("activityId"), query.get("registration"), query.get("agent")];
    if (place.join() !== [activityId, registration, JSON.stringify(actor)].join())
      return refuse(403, `10.0: the launched activity, registration and agent, found ${place.join()}`);
    const name = query.get("stateId") ?? "";
    const found = documents.get(name);
    if (request.method === "GET")
      return found === undefined
        ? new Response("", { status: 404 })
        : new Response(found, { headers: { "content-type": "application/json" } });
    if (name === "LMS.LaunchData") return refuse(403, "10.0: the launch data are not to be changed");
    if (request.method !== "PUT") return refuse(405, `${request.method} of a state`);
    documents.set(name, await request.text());
    return new Response(null, { status: 204 });
  }

  return {
    token,
    statements,
    refused,
    asked,
    async answer(request) {
      const { pathname, searchParams } = new URL(request.url);
      asked.push(`${request.method} ${pathname}`);
      if (pathname === fetchPath) return giveToken(request.method);
      if (request.headers.get("authorization") !== `Basic ${token}`) return refuse(401, "8.2.2: the token");
      if (request.headers.get("x-experience-api-version") !== VERSION) return refuse(400, `xAPI ${VERSION}`);
      if (statements.some((each) => nameOf(each) === "terminated"))
        return refuse(403, `9.3.8: the session is over, found ${request.method} ${pathname}`);
      const resource = pathname.slice(endpoint.length);
      if (resource === "activities/state") return state(request, searchParams);
      // This learner has set no preferences.
      if (resource === "agents/profile") return new Response("", { status: 404 });
      if (resource !== "statements") return refuse(404, `no resource ${resource}`);
      if (!/^(POST|PUT)$/.test(request.method)) return refuse(405, `${request.method} of statements`);
      return keep(await request.json(), request.method === "PUT" ? searchParams.get("statementId") : null);
    },
  };
}

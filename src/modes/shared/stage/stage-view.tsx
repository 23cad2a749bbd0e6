/** A mode's place on the stage: the scene edge to edge, its text equivalent, its handles, and what lies over it. */
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { setView } from "../../../state/edit.ts";
import { swipeOf } from "../../../state/scene-state.ts";
import { HandleSliders } from "../../../ui/handle-sliders.tsx";
import type { Context } from "../mode.ts";
import { useFetchedPart } from "../offline/fetched-part.ts";
import { sceneReading } from "../words/scene-reading.ts";

export interface StageViewProps {
  readonly context: Context;
  /** CSS px: smallest type in the scene; 24 in a lecture or kiosk */
  readonly floor: number;
  /** A cross reads the blood where it stands. */
  readonly probing?: boolean;
  /** The element marked `data-clear` among these is what nothing covers; the scene keeps its words inside it. */
  readonly children: ComponentChildren;
}

export function StageView({ context, floor, probing = false, children }: StageViewProps) {
  const { session, stage } = context;
  const over = useRef<HTMLDivElement>(null);
  useEffect(() => stage.show(floor), [stage, floor]);
  useEffect(() => {
    const clear = over.current?.querySelector("[data-clear]");
    if (!clear) return;
    const measure = () => {
      const box = clear.getBoundingClientRect();
      const top = box.top + scrollY;
      stage.setInsets({
        top,
        left: box.left,
        right: innerWidth - box.right,
        bottom: innerHeight - top - box.height,
      });
    };
    const observer = new ResizeObserver(measure);
    observer.observe(clear);
    observer.observe(document.documentElement);
    measure();
    return () => observer.disconnect();
  });
  const point = ({ offsetX, offsetY }: PointerEvent) => {
    const focus = stage.pick(offsetX, offsetY);
    if (focus !== session.scene.peek().view.focus) session.edit("focus", setView({ focus }));
  };
  const press = (event: PointerEvent) => {
    session.forget();
    point(event);
  };
  const { way, opened } = stage;
  const swiped = swipeOf(session.scene.value) !== null;
  const [divider, fetchDivider] = useFetchedPart(
    async () => (await import("../handles/swipe-divider.tsx")).SwipeDivider,
  );
  useEffect(() => {
    if (swiped) void fetchDivider();
  }, [swiped]);
  const exercised = session.scene.value.scene === "exercise";
  const [figures, fetchFigures] = useFetchedPart(
    async () => (await import("../handles/effort-figures.tsx")).EffortFigures,
  );
  useEffect(() => {
    if (exercised) void fetchFigures();
  }, [exercised]);
  const [probe, fetchProbe] = useFetchedPart(async () => (await import("../handles/probe.tsx")).Probe);
  useEffect(() => {
    if (probing) void fetchProbe();
  }, [probing]);
  const Probe = probing && way.value !== "none" && probe.value;
  const Divider = swiped && divider.value;
  const Figures = exercised && figures.value;
  return (
    <div ref={over}>
      <section aria-label={t("stage.name")}>
        {way.value === "none" ? (
          <div class="stage-without-picture" role="status">
            <p>{t("stage.noPicture")}</p>
          </div>
        ) : (
          <div
            class="stage-surface"
            role="img"
            aria-label={t("stage.name")}
            aria-describedby="scene-reading"
            onPointerMove={point}
            onPointerDown={press}
          />
        )}
        <p class="unseen" id="scene-reading">
          {opened.value ? sceneReading(context).join(" ") : t("reading.waiting")}
        </p>
        {Probe && <Probe stage={stage} />}
        {Divider && <Divider context={context} />}
        {Figures && <Figures context={context} />}
        <HandleSliders editing={session} handles={stage.handles} surface={stage} />
      </section>
      {children}
    </div>
  );
}

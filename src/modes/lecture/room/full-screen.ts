/** Full screen where the browser allows it; where it does not, the talk goes on in its window. */
export function toggleFullScreen(): void {
  const change = document.fullscreenElement
    ? document.exitFullscreen()
    : document.documentElement.requestFullscreen?.();
  change?.catch(() => {});
}

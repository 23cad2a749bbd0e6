// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, describe, expect, it, vi } from "vitest";
import { NumberField } from "../../src/ui/number-field.tsx";

const host = document.createElement("div");
document.body.append(host);
afterEach(() => render(null, host));

function mount(onChange = vi.fn()) {
  act(() =>
    render(
      <NumberField label="Width" value={18} min={8} max={30} digits={1} unit="mm" onChange={onChange} />,
      host,
    ),
  );
  const input = host.querySelector("input")!;
  const type = (text: string) =>
    act(() => {
      input.value = text;
      input.dispatchEvent(new Event("input", { bubbles: true }));
    });
  const press = (key: string) =>
    act(() => void input.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true })));
  return { input, type, press, onChange };
}

describe("a number field", () => {
  it("reads comma and point", () => {
    const { type, press, onChange } = mount();
    type("17,5");
    press("Enter");
    expect(onChange).toHaveBeenLastCalledWith(17.5);
    type("20.25");
    press("Enter");
    expect(onChange).toHaveBeenLastCalledWith(20.25);
  });

  it("keeps what is out of range, explains it, and changes nothing", () => {
    const { input, type, press, onChange } = mount();
    type("99");
    press("Enter");
    expect(onChange).not.toHaveBeenCalled();
    expect(input.value).toBe("99");
    expect(input.getAttribute("aria-invalid")).toBe("true");
    expect(host.querySelector("[role=alert]")!.textContent).toContain("from 8.0 to 30.0\u202fmm");
  });

  it("takes Escape as never mind", () => {
    const { input, type, press, onChange } = mount();
    type("abc");
    press("Escape");
    expect(input.value).toBe("18.0");
    expect(onChange).not.toHaveBeenCalled();
  });
});

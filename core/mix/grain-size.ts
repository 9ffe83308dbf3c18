import type { Component } from "./component.ts";

/** Mid sizes of the classes: fine below 0.5 mm, medium 0.5 to 2 mm, coarse above. Chosen by us. */
const CLASS_MM: Readonly<Record<Component["grain"], number>> = { fine: 0.25, medium: 1, coarse: 4 };

/** Middle grain size of a component, its own or its class's. */
export function grainMmOf(component: Pick<Component, "grain" | "grainMm">): number {
  return component.grainMm ?? CLASS_MM[component.grain];
}

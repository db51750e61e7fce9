/**
 * Gear, hookups and their limits, as {@code rig.toml} says.
 *
 * <pre>
 *   rig.toml ──▶ RigFile ─┬─ GearReader ──▶ GearEntry ── Ratings (marking, else a table) ──┐
 *                         ├─ HookupReader ──▶ ItemReader ◀───────────────────────────────┘
 *                         │                      └──▶ LoadedItem: load = multiple · tension, allowed, proof, breaking
 *                         ├─ DetectReader ──▶ DetectSettings          │
 *                         └─ winch, cell, shaft                       └──▶ Limit: least of allowed / multiple
 *                                   └──▶ Driveline, Cell
 *   all of it ──▶ Rig ──▶ the detectors, the reports;  FullPull: what the winch at full pull does to a hookup
 * </pre>
 *
 * <p>Start at {@link tautlog.rig.Rig#parse}. Forces are exact decimals in newtons, 34 digits where a cosine enters. The
 * published tables lie beside the classes as resources, each with its source. Nothing here opens a file of the user's.
 */
@org.jspecify.annotations.NullMarked
package tautlog.rig;

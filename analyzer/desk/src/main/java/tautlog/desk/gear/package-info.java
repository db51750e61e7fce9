/**
 * The life of every piece of gear: what it carried, what took it out of service, who put it back.
 *
 * <pre>
 *   what outings did to gear ─┐
 *   the rig of each winch ────┼──▶ {@link tautlog.desk.gear.GearLives} ──▶ {@link tautlog.desk.gear.GearPage}, {@link tautlog.desk.gear.GearJson}
 *   the ledger ───────────────┘     {@link tautlog.desk.gear.PieceJudge} decides of each piece
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.gear.GearLives}. Gear that was overloaded stays out until a named person's inspection lies behind the
 * overload; where the order of two things is not known, it stays out. Nothing here reads a file or a clock.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.gear;

/**
 * The logger at work: every stage of it, in order, and the threads.
 *
 * <pre>
 *   {@link tautlog.logger.run.LoggerRun} starts                                                    owns
 *   reader    LineReader: port ▶ instrument.InstrumentFeed ▶                     the line, the feed, the outing's clock,
 *             live.LiveOutings ▶ detect.Detection ▶ recorder.Backlog             hookup in force, detectors
 *   recorder  recorder.Recorder: Backlog ▶ tautlog.recording                     the recording, its file
 *   shaft     ShaftReader: another port ▶ instrument.shaft.ShaftSource ▶ reader  that line, its decoder
 *   poller    instrument.modbus.Poller: questions ▶ port                        the line's other direction
 *   thinning  recorder.Thinning: old recordings, while the disk is nearly full   closed recordings, one at a time
 *   beacon    beacon.BeaconSender: BeaconLamp ▶ port                             the line's other direction
 *   control   control.ControlServer: its socket ▶ status, marks                  the socket
 *   service   service.Feeding: reader and recorder get on ▶ systemd             what it has told
 *   publish   publish.Publisher, one an outlet: recordings ▶ a broker, a server   its outlet, its cursor in state.db
 *   drive     drive.DriveWatch: recordings ▶ a USB drive                         what it writes there
 *   main      waits; writes status.json each minute                              status.json
 * </pre>
 *
 * <p>Threads meet in these places: the backlog and the shaft's queue (bounded, count what they lose), the Modbus question that is out, the lamp, the list of marks that wait for
 * the reader, and the latest readings. The reader never waits for a disk, a beacon or a client, except that a replayed
 * instrument (clock = "device") is held up rather than lost.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.run;

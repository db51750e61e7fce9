package tautlog.desk.use;

/**
 * Where an outing is kept.
 *
 * @param recordingId of the recording, which stays when the file is renamed
 * @param file as it was given
 * @param outing 0 for the file's first
 */
public record OutingPlace(String winch, String recordingId, String file, int outing) {}

package tautlog.desk.use;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.desk.analysis.Copies;
import tautlog.desk.analysis.HistoryNotes;

/**
 * From when on each outing counts. A winch cannot work twice at once: of two of its outings that overlap in time the one that began
 * later counts from the end of the other.
 */
final class Windows {
    /** Chosen: clocks of two outings may be off against each other by less than what shows as a set clock. */
    private static final Duration CLOCKS_DIFFER = Duration.ofSeconds(2);

    private final Map<String, Reach> reachByWinch = new HashMap<>();
    private final List<Member> members = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    /** An outing that counts, and where it is kept. */
    record Member(Path file, String winch, String recordingId, OutingHead head, Optional<Instant> from)
            implements Copies.Candidate {
        @Override
        public int index() {
            return head.identity().index();
        }

        @Override
        public long samples() {
            return head.samples();
        }

        @Override
        public boolean thinned() {
            return head.thinned();
        }

        @Override
        public Copies.Identity identity() {
            return head.identity();
        }

        Instant startOrLast() {
            return head.start().orElse(Instant.MAX);
        }

        String name() {
            return HistoryNotes.outing(file, index());
        }
    }

    /** Until when a winch is known to have been recorded, and in which outing. */
    private record Reach(Instant until, Member by) {}

    private Windows() {}

    /** @param once each outing once */
    static Windows of(List<Member> once) {
        Windows windows = new Windows();
        once.stream().sorted(Comparator.comparing(Member::startOrLast)).forEach(windows::add);
        return windows;
    }

    private void add(Member member) {
        if (member.head().start().isEmpty() || member.head().end().isEmpty()) {
            members.add(member);
            return;
        }
        Instant start = member.head().start().get();
        Instant end = member.head().end().get();
        Reach reach = reachByWinch.get(member.winch());
        Member counted = member;
        if (reach != null && start.plus(CLOCKS_DIFFER).isBefore(reach.until())) {
            counted = new Member(
                    member.file(), member.winch(), member.recordingId(), member.head(), Optional.of(reach.until()));
            notes.add(note(member, reach, end));
        }
        members.add(counted);
        if (reach == null || end.isAfter(reach.until())) {
            reachByWinch.put(member.winch(), new Reach(end, counted));
        }
    }

    private static String note(Member member, Reach reach, Instant end) {
        String both = "OVERLAP: " + member.name() + " and " + reach.by().name() + " of winch " + member.winch()
                + " tell of the same time, though a winch works once: ";
        return both
                + (end.isAfter(reach.until())
                        ? "the later one counts from the end of the other, " + reach.until()
                        : "the later one lies within the other, no time and no pull of it counts")
                + "; its overloads count all the same. One of their clocks is wrong, or two instruments ran.";
    }

    /** In the order of their starts; those without a clock last, as they were given. */
    List<Member> members() {
        return List.copyOf(members);
    }

    List<String> notes() {
        return List.copyOf(notes);
    }
}

package tautlog.desk.page;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Moment;
import tautlog.detect.Known;
import tautlog.rig.Band;

/** One sentence for like findings of one pull: how many, from when to when, and the greatest of them. */
final class MergedSentences {
    private final Screen screen;
    private final EventSentences words;

    MergedSentences(Screen screen, EventSentences words) {
        this.screen = screen;
        this.words = words;
    }

    /**
     * What findings must have in common to be told in one sentence.
     *
     * @param details that the sentence gives for all of them
     */
    record Likeness(Class<? extends Entry> kind, List<Object> details) {
        Likeness {
            details = List.copyOf(details);
        }

        static Likeness of(Entry entry) {
            return new Likeness(entry.getClass(), details(entry));
        }

        private static List<Object> details(Entry entry) {
            if (entry instanceof Entry.Overload overload) {
                return List.of(overload.against().hookup(), overload.band(), overload.worseMayBe(), overload.atLeast());
            } else if (entry instanceof Entry.Shock shock) {
                return List.of(shock.against().hookup(), shock.resolved(), shock.atLeast());
            } else if (entry instanceof Entry.Jolt jolt) {
                return List.of(jolt.resolved(), jolt.atLeast());
            } else if (entry instanceof Entry.Drop drop) {
                return List.of(drop.staysSlack(), drop.shaft());
            } else if (entry instanceof Entry.Stall stall) {
                return List.of(stall.ended());
            }
            return List.of();
        }
    }

    /** When an entry is told: at its peak, or where it starts. */
    static Moment at(Entry entry) {
        if (entry instanceof Entry.Shock shock) {
            return shock.at();
        }
        return entry instanceof Entry.Jolt jolt ? jolt.at() : entry.start();
    }

    /** @param alike at least one, all of one {@link Likeness}, in the order of time */
    String of(List<Entry> alike) {
        Entry first = alike.get(0);
        if (first instanceof Entry.Overload) {
            return overloads(only(alike, Entry.Overload.class));
        } else if (first instanceof Entry.Shock) {
            return greatest(alike, Entry.Shock.class, "Shock", "The greatest", Entry.Shock::peakNewtons, words::shock);
        } else if (first instanceof Entry.Jolt) {
            return greatest(alike, Entry.Jolt.class, "Jolt", "The greatest", Entry.Jolt::peakNewtons, words::jolt);
        } else if (first instanceof Entry.Drop) {
            return drops(only(alike, Entry.Drop.class));
        }
        return greatest(alike, Entry.Stall.class, "Stall", "The deepest", stall -> -stall.leastRpm(), words::stall);
    }

    private static <E extends Entry> List<E> only(List<Entry> entries, Class<E> kind) {
        return entries.stream().map(kind::cast).toList();
    }

    private static <E extends Entry> E most(List<E> entries, ToDoubleFunction<E> size) {
        return entries.stream().max(Comparator.comparingDouble(size)).orElseThrow();
    }

    private <E extends Entry> String greatest(
            List<Entry> alike,
            Class<E> kind,
            String name,
            String most,
            ToDoubleFunction<E> size,
            Function<E, String> sentence) {
        String greatest = sentence.apply(most(only(alike, kind), size));
        return alike.size() == 1
                ? greatest
                : fromTo(at(alike.get(0)), at(alike.get(alike.size() - 1))) + " " + name + " "
                        + EventSentences.times(alike.size()) + ". " + most + ": " + greatest;
    }

    private String overloads(List<Entry.Overload> alike) {
        String greatest = words.overload(most(alike, Entry.Overload::peakNewtons));
        if (alike.size() == 1) {
            return greatest;
        }
        double above = alike.stream().mapToDouble(Entry.Overload::aboveSeconds).sum();
        long cut = alike.stream()
                .filter(overload -> overload.hasGap() || overload.cutByGap() || overload.cutByEnd())
                .count();
        return fromTo(alike.get(0).start(), alike.get(alike.size() - 1).end()) + " Overload "
                + EventSentences.times(alike.size()) + band(alike.get(0)) + ", above the limit for "
                + Screen.length(above)
                + " in all" + (cut == 0 ? "" : ", readings missing in or after " + cut + " of them")
                + ". The greatest: " + greatest;
    }

    private static String band(Entry.Overload overload) {
        return (overload.band() == Band.PAST_WLL
                        ? ""
                        : ", each " + overload.band().word())
                + overload.worseMayBe()
                        .map(worse -> ", each " + EventSentences.mayBe(worse))
                        .orElse("");
    }

    private String drops(List<Entry.Drop> alike) {
        if (alike.size() == 1) {
            return words.drop(alike.get(0));
        }
        Entry.Drop most = most(alike, drop -> drop.beforeNewtons() - drop.afterNewtons());
        return fromTo(alike.get(0).start(), alike.get(alike.size() - 1).start()) + " Drop "
                + EventSentences.times(alike.size()) + ", the greatest from " + screen.force(most.beforeNewtons())
                + screen.interval(most.beforeInterval())
                + " to " + screen.force(most.afterNewtons()) + screen.interval(most.afterInterval()) + "; each time "
                + EventSentences.slack(most.staysSlack())
                + ". Each time "
                + EventSentences.driveline(
                        most.shaft(), same(alike, Entry.Drop::clutch), same(alike, Entry.Drop::brake));
    }

    /** What holds for all of them; unknown when they differ. */
    private static Known same(List<Entry.Drop> drops, Function<Entry.Drop, Known> of) {
        List<Known> said = drops.stream().map(of).distinct().toList();
        return said.size() == 1 ? said.get(0) : Known.UNKNOWN;
    }

    private String fromTo(Moment from, Moment to) {
        return screen.preciseTime(from) + " to " + screen.preciseTime(to);
    }
}

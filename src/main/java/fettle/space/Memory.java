package fettle.space;

import java.util.Arrays;

/**
 * Answers by question, both numbers from 0 on, in a table of bounded size in which newer answers take the place of older ones: never wrong, but forgetful.
 * Starts small, since most folds are.
 */
final class Memory {

    /** No answer is remembered. */
    static final int FORGOTTEN = -2;

    private static final int FIRST = 1 << 8;
    private static final int LAST = 1 << 22;

    private long[] questions = blank(FIRST);
    private int[] answers = new int[FIRST];
    private int kept;

    private static long[] blank(int size) {
        long[] questions = new long[size];
        Arrays.fill(questions, -1);
        return questions;
    }

    /** Questions that differ a little in the last number stand close together, since they are often asked one after the other. */
    private int place(long question) {
        return (int) ((question >>> 32) * Spreading.LONG >>> 40) + (int) question & (questions.length - 1);
    }

    /** A question about two numbers whose order makes no difference. */
    static long pair(int one, int other) {
        return (long) Math.min(one, other) << 32 | Math.max(one, other);
    }

    /** What was answered to a question, or {@link #FORGOTTEN}. */
    int recall(long question) {
        int at = place(question);
        return questions[at] == question ? answers[at] : FORGOTTEN;
    }

    /** Remembers an answer, and returns it. */
    int keep(long question, int answer) {
        if (++kept > questions.length && questions.length < LAST) {
            grow();
        }
        int at = place(question);
        questions[at] = question;
        answers[at] = answer;
        return answer;
    }

    private void grow() {
        long[] oldQuestions = questions;
        int[] oldAnswers = answers;
        questions = blank(4 * oldQuestions.length);
        answers = new int[questions.length];
        kept = 0;
        for (int i = 0; i < oldQuestions.length; i++) {
            if (oldQuestions[i] >= 0) {
                int at = place(oldQuestions[i]);
                questions[at] = oldQuestions[i];
                answers[at] = oldAnswers[i];
                kept++;
            }
        }
    }
}

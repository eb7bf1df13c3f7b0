package fettle.space;

import java.util.Arrays;

/** Numbers, the last that was pushed on top. */
final class IntStack {

    private int[] numbers = new int[8];
    private int size;

    void push(int number) {
        if (size == numbers.length) {
            numbers = Arrays.copyOf(numbers, 2 * size);
        }
        numbers[size++] = number;
    }

    int top() {
        return numbers[size - 1];
    }

    int pop() {
        return numbers[--size];
    }

    int size() {
        return size;
    }

    boolean isEmpty() {
        return size == 0;
    }

    /** In the order in which they were pushed. */
    int[] toArray() {
        return Arrays.copyOf(numbers, size);
    }
}

package lapwright.measure;

/**
 * How money is printed: to the cent, {@code $1,093.40} for USD, else {@code 1,093.40 EUR}.
 *
 * @param currency code of the currency
 */
public record MoneyStyle(String currency) {
  public String print(Money money) {
    long cents = money.toCent().tenThousandths() / Money.PER_CENT;
    String sign = cents < 0 ? "-" : "";
    String amount = grouped(Math.abs(cents / 100)) + "." + twoDigits(Math.abs(cents % 100));
    return currency.equals("USD") ? sign + "$" + amount : (sign + amount + " " + currency).strip();
  }

  /** A whole number with commas between thousands. */
  public static String grouped(long number) {
    StringBuilder text = new StringBuilder(Long.toString(number));
    int first = number < 0 ? 1 : 0;
    for (int i = text.length() - 3; i > first; i -= 3) {
      text.insert(i, ',');
    }
    return text.toString();
  }

  private static String twoDigits(long number) {
    return number < 10 ? "0" + number : Long.toString(number);
  }
}

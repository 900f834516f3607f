using System.Globalization;

namespace Studio.Core.Staff;

/// <summary>
/// Currencies by their ISO 4217 code, and into how many decimal places each is divided there (list one, from memory).
/// Amounts are whole numbers of the smallest unit.
/// </summary>
public static class Currency
{
    private static readonly (int Places, string Codes)[] Lists =
    [
        (
            2,
            """
            AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP
            CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES
            KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK
            NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB
            TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD XCG YER ZAR ZMW ZWG
            """
        ),
        (0, "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF"),
        (3, "BHD IQD JOD KWD LYD OMR TND"),
    ];

    private static readonly Dictionary<string, int> Digits = Table();

    /// <summary>Whether there is such a code.</summary>
    public static bool Exists(string code) => Digits.ContainsKey(code);

    /// <summary>How many decimal places its smallest unit takes.</summary>
    public static int DigitsOf(string code) => Digits[code];

    /// <summary>An amount of its smallest unit as a decimal number with a point: <c>1250</c> EUR is <c>12.50</c>.</summary>
    public static string Text(long amount, string code)
    {
        var digits = DigitsOf(code);
        var sign = amount < 0 ? "-" : "";
        var text = Math.Abs(amount).ToString(CultureInfo.InvariantCulture).PadLeft(digits + 1, '0');
        return digits == 0 ? sign + text : $"{sign}{text[..^digits]}.{text[^digits..]}";
    }

    /// <summary>
    /// The amount of a decimal number with a point in the smallest unit: <c>12.5</c> EUR is <c>1250</c>. Null when it is not
    /// such a number, is below zero, or has more places than the currency.
    /// </summary>
    public static long? Read(string text, string code)
    {
        if (
            !decimal.TryParse(
                text,
                NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out var number
            )
            || number > 1_000_000
        )
            return null;
        for (var digits = DigitsOf(code); digits > 0; digits--)
            number *= 10;
        return decimal.Truncate(number) == number ? (long)number : null;
    }

    private static Dictionary<string, int> Table()
    {
        var digits = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (places, codes) in Lists)
        foreach (var code in codes.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
            digits[code] = places;
        return digits;
    }
}

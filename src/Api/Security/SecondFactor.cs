namespace Toepan.Api.Security;

/// <summary>How an account's second factor stands.</summary>
public sealed record SecondFactor(bool On, DateTimeOffset? Since, int RecoveryCodesLeft);

/// <summary>A second factor that waits for its first code.</summary>
/// <param name="Key">The key in base 32, as it is typed.</param>
/// <param name="Address">The key as the address a QR code carries.</param>
public sealed record Enrolment(string Key, string Address);

/// <summary>Codes that are shown this once.</summary>
public sealed record RecoveryCodes(IReadOnlyList<string> Codes);

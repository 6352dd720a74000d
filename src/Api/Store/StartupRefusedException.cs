namespace Toepan.Api.Store;

/// <summary>The service cannot start here. The message tells the person at the keyboard what is wrong and what to do; no stack trace helps.</summary>
public sealed class StartupRefusedException : Exception
{
    public StartupRefusedException()
    {
    }

    public StartupRefusedException(string message)
        : base(message)
    {
    }

    public StartupRefusedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}

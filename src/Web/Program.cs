return await Toepan.Web.Hosting.ToepanHost.Run(args);
